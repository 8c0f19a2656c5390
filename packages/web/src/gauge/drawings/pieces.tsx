import type { JSX } from 'react';

/** Pieces that the drawings of gauges are made of; numbers are places on a paper of 240 by 96. */

/** Light as a band whose half width changes from place to place along it. */
export function Light({
  along,
  half,
  middle = 48,
}: {
  readonly along: readonly number[];
  readonly half: readonly number[];
  readonly middle?: number;
}): JSX.Element {
  const top = along.map((x, i) => `${x} ${middle - (half[i] ?? 0)}`);
  const bottom = along.map((x, i) => `${x} ${middle + (half[i] ?? 0)}`).reverse();
  return <path className="light" d={`M${[...top, ...bottom].join('L')}Z`} />;
}

export const Laser = ({ x = 4, y = 48 }: { readonly x?: number; readonly y?: number }): JSX.Element => (
  <path className="part" d={`M${x} ${y - 10}h34v20h-34Z`} />
);

/** A card or a screen, seen from its edge. */
export const Card = ({
  x,
  from = 12,
  to = 84,
}: {
  readonly x: number;
  readonly from?: number;
  readonly to?: number;
}) => <path className="part heavy" d={`M${x} ${from}V${to}`} />;

export const Lens = ({ x, half = 26 }: { readonly x: number; readonly half?: number }): JSX.Element => (
  <path
    className="part glass"
    d={`M${x} ${48 - half}Q${x + 11} 48 ${x} ${48 + half}Q${x - 11} 48 ${x} ${48 - half}Z`}
  />
);

/** Marks of a ruler along a line. */
export function Ruler({
  from,
  to,
  across,
  upright = false,
}: {
  readonly from: number;
  readonly to: number;
  readonly across: number;
  readonly upright?: boolean;
}): JSX.Element {
  const marks: string[] = [];
  for (let at = from; at <= to; at += 6) {
    const long = (at - from) % 30 === 0 ? 8 : 4;
    marks.push(upright ? `M${across} ${at}h${long}` : `M${at} ${across}v${-long}`);
  }
  const edge = upright ? `M${across} ${from}V${to}` : `M${from} ${across}H${to}`;
  return <path className="part" d={`${edge}${marks.join('')}`} />;
}

/** A fibre along a path. */
export const Fibre = ({ d }: { readonly d: string }): JSX.Element => (
  <>
    <path className="fibre" d={d} />
    <path className="core" d={d} />
  </>
);

/** Something that tells power: a box with a dial. */
export const Meter = ({ x, y = 48 }: { readonly x: number; readonly y?: number }): JSX.Element => (
  <path
    className="part"
    d={`M${x} ${y - 13}h28v26h-28ZM${x + 7} ${y + 5}a8 8 0 0 1 14 0M${x + 14} ${y + 5}l4 -7`}
  />
);

/** Where something is moved, and which way. */
export const Arrow = ({ d, tip }: { readonly d: string; readonly tip: string }): JSX.Element => (
  <path className="arrow" d={`${d}${tip}`} />
);
