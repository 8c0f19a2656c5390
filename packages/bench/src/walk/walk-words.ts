/** Everything a screen or a shell says of a walk. */
import { writeInterval, writeValue } from '../units/write.ts';
import type { WalkEstimate, WalkRemaining, WalkVerdict } from './procedure.ts';
import type { WalkMeter } from './reading-text.ts';
import type { WalkPlan } from './session.ts';

/** What is believed to be missing, with its doubt: never a bare figure. By eye nothing is claimed. */
export function estimateText(estimate: WalkEstimate, meter: WalkMeter): string {
  if (meter === 'eye') return 'By eye nobody can say how much is missing.';
  const { missing, missingLow, missingHigh, horizontalShare } = estimate;
  if (missing === null || missingLow === null || missingHigh === null)
    return 'How much is missing cannot be said yet.';
  const digits = missingHigh < 0.095 ? 1 : 2;
  const about = `About ${writeValue(missing, 'fraction', digits)} of the light still missing, ${writeInterval(missingLow, missingHigh, 'fraction', digits)}`;
  return `${about}${sideText(horizontalShare)}.`;
}

function sideText(share: number | null): string {
  if (share === null) return '';
  if (share > 0.7) return ', mostly horizontal';
  return share < 0.3 ? ', mostly vertical' : '';
}

/** How much probably remains, never without its doubt. */
export function remainingText(remaining: WalkRemaining | null): string | null {
  if (remaining === null) return null;
  const [least, most] = remaining.steps;
  if (most <= 1) return 'This is probably the last step.';
  const [from, to] = remaining.seconds.map((seconds) => Math.max(1, Math.round(seconds / 60)));
  const steps = least === most ? `${most} steps` : `${least} to ${most} steps`;
  return `Probably ${steps} more, this one included: ${from === to ? `about ${to}` : `${from} to ${to}`} min.`;
}

/** How the walk ended, and whether it may be believed. */
export function verdictText({ reason, claims95 }: WalkVerdict, meter: WalkMeter): readonly string[] {
  const ended = {
    reached: 'The peak is reached.',
    'hand-limit': 'Your hand can do no better on these screws, as far as can be told.',
    budget: 'So many screws were turned that going on is not worth it.',
    'something-else': 'Something else is wrong: turning these screws will not mend it.',
  }[reason];
  const claim =
    meter === 'eye'
      ? 'By eye no share is claimed; with any meter more can be said.'
      : claims95
        ? 'Probably 95 % of what can be had is in; of such claims at least 85 in 100 should hold.'
        : 'That 95 % of what can be had is in is not claimed.';
  const next =
    reason === 'reached'
      ? 'Whether the top is as high as forecast is another question: focus and mode size are not walked.'
      : 'If the reading is far below the forecast, look at focus, mode size and a dirty facet before you walk again.';
  return [ended, claim, next];
}

/** What must be known before the first step, beyond the cautions. */
export function beforeWalkTexts({ known, fewModes }: WalkPlan): readonly string[] {
  return [
    'M1 is the mirror far from the lens, M2 the one before it. “Onwards” is the way you turned a screw first; keep to it.',
    ...(fewModes
      ? [
          'This fibre guides a few modes: the total reading hides light in the wrong ones. Look at the spot at the output, too: LP01 is one round spot; lobes or a ring mean that the aim is off although the reading is high.',
        ]
      : []),
    ...(known.manyModes
      ? ['This fibre guides many modes: the peak is a plateau, and its middle is what is sought.']
      : []),
  ];
}
