/** What was noticed in a walk, said with what to do about it. */
import { writeValue } from '../units/write.ts';

type Values = Readonly<Record<string, number>>;

/** A sentence for each sign a walk can notice. What is not in this table is not noticed. */
const sentences = {
  'cladding-light': ({ share = 0 }: Values) =>
    `${written(share)} of the reading was cladding light. Take it off before you walk again: it hides the peak of the core.`,
  'light-not-back': () =>
    'The light did not come back: the wrong screw, the wrong way, or not far enough. Look which screw you turned before, then search farther to both sides.',
  'step-undone': () =>
    'Still no light: the step before is undone. Turn M1 until the light is back; if another screw was turned by mistake, turn that one back first.',
  'far-mirror-does-nothing': () =>
    'Turning M1 does not change the light. Look whether it is the right screw; if it is, the beam is cut at M2 or at the lens, or the meter sees other light: steer again.',
  'peak-does-not-fit': () =>
    'This peak is lower than any that was to be expected: it may have been missed. Look for it once more; if it stays low, compare the source with a reference.',
  'second-maximum': () =>
    'This peak is higher than any that was to be expected: the screw probably stood on a weaker one beside it before, a ghost or a higher mode. The higher one counts; what was read on the other is forgotten.',
  'readings-disagree': () =>
    'The readings do not fit together: check the source against a reference, and the lengths of the launch.',
  'layout-doubtful': () =>
    'The readings do not fit the lengths of this launch. The focal length counts most: measure the reverse beam at the lens and write it down.',
  'ridge-steeper': () =>
    'The peak falls off faster along M1 than the lengths say: the focal length is probably shorter than written, or the mirrors are farther apart.',
  'ridge-flatter': () =>
    'The peak falls off more slowly along M1 than the lengths say: the focal length is probably longer than written, or the mirrors are closer together.',
  'goes-on-as-taught': () =>
    'The lengths explain these readings no longer, so they are left aside: from here on the walk goes as it is taught, step by step until the peak is passed, and claims nothing.',
  plateau: () =>
    'The peak is as flat as that of a fibre of many modes: from here on its middle is sought. If yours guides one mode, this is light in the cladding: coil the fibre loosely or wet its bare cladding, and look at the spot at its end.',
  'source-drifts': ({ change = 0 }: Values) =>
    `Peaks that should be alike ${change > 0 ? 'rose' : 'fell'} one after the other, by ${written(Math.abs(change))} in all: the source, warmth or a creeping mount. Wait, note a reference, and read the source beside the light if you can.`,
  'repeats-scatter': ({ scatter = 0 }: Values) =>
    `What stands after a sweep differs by ${written(scatter)} from one time to the next: this is as fine as your hand is on these screws. A longer lever, a finer thread, a hex key or a shorter focal length would help; more sweeps will not.`,
  'peaks-scatter': ({ scatter = 0 }: Values) =>
    `The peak of a screw differs by ${written(scatter)} from one time to the next: the meter or the source is noisier than a claim counts with. Average its readings or steady the source, and look at the last screws once more.`,
  'stands-below-highest': ({ below = 0.03 }: Values) =>
    `The reading stands at least ${written(below)} below the highest seen, however often: slack, a spring, or a hand on the knob. Finish with the hand off the knob.`,
  'below-forecast': ({ share = 0 }: Values) =>
    `The peak is only ${written(share)} of the forecast. The four screws cannot bring more: look at the focus, then mode size and astigmatism, a dirty facet, and whether the meter minds polarisation.`,
  'below-best': ({ share = 0 }: Values) =>
    `This peak is only ${written(share)} of the highest that this walk has seen: a screw was moved beside the order, or a reading was taken before its turn was done. The ridge is looked at once more.`,
  'stays-below-best': ({ share = 0 }: Values) =>
    `The last peak is only ${written(share)} of the highest that this walk has seen. More was there: begin another walk from here, or undo to where it stood higher.`,
  'focus-may-be-off': ({ share = 0 }: Values) =>
    `The peak is ${written(share)} of the forecast, which a focus that is off would explain: it is tried.`,
  'focus-better': ({ gained = 0 }: Values) =>
    `The focus stands better now: ${written(gained)} more light. The ridge is looked at once more.`,
  'focus-put-back': () =>
    'The focus was best where it stood, and is put back: what is missing has another cause.',
} as const satisfies Readonly<Record<string, (values: Values) => string>>;

/** What a walk can notice. */
export type WalkRemarkId = keyof typeof sentences;

/** Something noticed that is said to the person: a failure sign, a warning, a fact. */
export interface WalkRemark {
  readonly id: WalkRemarkId;
  readonly values?: Values;
}

/** All of them. */
export const walkRemarkIds = Object.keys(sentences) as readonly WalkRemarkId[];

const written = (share: number): string => writeValue(share, 'fraction', 2);

/** Something noticed, in a sentence with what to do about it. */
export const remarkText = ({ id, values = {} }: WalkRemark): string => sentences[id](values);
