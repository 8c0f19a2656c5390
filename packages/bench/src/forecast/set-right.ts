import type { Budget } from './budget.ts';
import type { SetRight } from './overlap-causes.ts';

/**
 * @param stated the bench as stated, as exactly as it is known
 * @param quick the same in the way of the draws
 */
export function setRight(stated: Budget, quick: Budget): SetRight {
  const couplings = stated.chain.couplings.map((share, i) =>
    shifted(share, quick.chain.couplings[i] ?? share),
  );
  const bends = bendsOf(stated).map((share, i) => shifted(share, bendsOf(quick)[i] ?? share));
  const { fundamental, followed, guided } = stated.chain;
  const whole = couplings.at(-1)!;
  const alone = shifted(guided * followed, quick.chain.guided);
  const shiftedFundamental =
    fundamental === null ? null : shifted(fundamental, quick.chain.fundamental ?? fundamental);
  return {
    coupling: (place, drawn) => couplings[place]?.(drawn) ?? drawn,
    fundamental: (drawn) => shiftedFundamental?.(drawn) ?? drawn,
    followed: (drawn) => (followed === 1 || drawn <= 0 ? 1 : Math.min(1, alone(drawn) / whole(drawn))),
    bend: (place, drawn) => bends[place]?.(drawn) ?? drawn,
  };
}

const bendsOf = ({ losses }: Budget): readonly number[] =>
  losses.filter(({ id }) => id.startsWith('bend-')).map(({ transmission }) => transmission);

/**
 * A share as it would be by the exact way, from the share by the quick way: exactly so at the stated values. Large shares
 * are multiplied; small ones raised to a power, which keeps what is far above the stated value below 1.
 */
export function shifted(stated: number, quick: number): (drawn: number) => number {
  if (stated === quick) return (drawn) => drawn;
  // where the quick way sees nothing at all, what the exact one sees is there in every draw
  if (quick <= 0) return (drawn) => stated + drawn * (1 - stated);
  if (quick > 0.5 || stated <= 0) return (drawn) => Math.min(1, (drawn * stated) / quick);
  const power = Math.log(Math.min(stated, 0.999)) / Math.log(quick);
  return (drawn) => Math.min(1, Math.max(0, drawn)) ** power;
}
