/** A stretch of time, ms since 1970-01-01T00:00Z. */
export interface TimeStretch {
  readonly from: number;
  readonly to: number;
}

/** Shorter ones show nothing that is read: times are kept to fractions of a millisecond, and asked for in whole ones. */
const shortest = 10;

/** Nearer or farther about a place in it: `factor` 2 shows half as much. Never beyond `most`. */
export function zoomed(
  { from, to }: TimeStretch,
  factor: number,
  around: number,
  most: TimeStretch,
): TimeStretch {
  const length = Math.max(shortest, (to - from) / factor);
  const share = to > from ? (around - from) / (to - from) : 0.5;
  return within({ from: around - share * length, to: around + (1 - share) * length }, most);
}

/** Later by a share of its length; earlier if that is negative. Never beyond `most`. */
export function shifted({ from, to }: TimeStretch, share: number, most: TimeStretch): TimeStretch {
  const by = share * (to - from);
  return within({ from: from + by, to: to + by }, most);
}

/** The last `length` ms of a stretch. */
export const endOf = ({ from, to }: TimeStretch, length: number): TimeStretch => ({
  from: Math.max(from, to - length),
  to,
});

/** Between two places, whichever comes first. */
export const between = (one: number, other: number, most: TimeStretch): TimeStretch =>
  zoomed({ from: Math.min(one, other), to: Math.max(one, other) }, 1, (one + other) / 2, most);

/** Two fingers that have moved: what was under each is under it still. `places` are shares of the width. */
export function pinched(
  { from, to }: TimeStretch,
  before: readonly [number, number],
  now: readonly [number, number],
  most: TimeStretch,
): TimeStretch {
  const length = to - from;
  const grip = [from + before[0] * length, from + before[1] * length] as const;
  const apart = now[1] - now[0];
  if (Math.abs(apart) < 1e-3) return { from, to };
  const next = Math.max(shortest, Math.abs((grip[1] - grip[0]) / apart));
  const start = (grip[0] + grip[1]) / 2 - ((now[0] + now[1]) / 2) * next;
  return within({ from: start, to: start + next }, most);
}

/** As long as it was where that fits, and inside. */
function within({ from, to }: TimeStretch, most: TimeStretch): TimeStretch {
  const length = Math.min(to - from, Math.max(shortest, most.to - most.from));
  const start = Math.min(Math.max(from, most.from), Math.max(most.from, most.to - length));
  return { from: start, to: start + length };
}
