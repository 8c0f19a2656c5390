/** The steps of a launch, from the bench without power to packing up, and what each asks of hands and eyes. */

import { shown } from '../document/shown.ts';
import { Refusal } from '../refusal.ts';
import { type StepName, stepNames } from './step-names.ts';

/** What a step is about, whatever the bench. */
export interface Step {
  readonly title: string;
  /** What to do, short and in order. */
  readonly orders: readonly [string, ...string[]];
  /** Which hazards of the walk belong to it, by the beginning of their ids. */
  readonly hazards: readonly string[];
}

/** What is to be done and minded before and during each step. */
export const steps: Readonly<Record<StepName, Step>> = {
  'before-power': {
    title: 'Before any power',
    orders: [
      'Find out who decides here about laser safety, and ask before the first switch-on.',
      'Take off rings and watches; put reflecting things away.',
      'Park both fibre ends in beam stops.',
      'Lay out eyewear for every wavelength in the list below.',
      'Tell someone that you work with the laser, and until when.',
    ],
    hazards: ['laser-exit', 'together-launch', 'invisible-light', 'no-interlock', 'non-beam'],
  },
  'first-light': {
    title: 'First light',
    orders: [
      'Bring the power down to what you align with before the beam leaves the laser.',
      'Put a beam stop where the next part will stand, then mount the part.',
      'Keep the beam level and below every eye, sitting ones too.',
    ],
    hazards: ['laser-exit', 'skin-beam', 'bumped-mirror', 'invisible-light'],
  },
  'two-mirrors': {
    title: 'Two steering mirrors',
    orders: [
      'Block behind the place of each mirror before you put it there.',
      'Search for the beam with a card; no eye on its axis, ever.',
      'Cover the backs of the mirrors: they leak.',
      'Turn screws with the far side blocked.',
    ],
    hazards: [
      'laser-exit',
      'together-launch',
      'mirror-',
      'lens-L',
      'filter-',
      'entry-scatter',
      'bumped-mirror',
      'invisible-light',
    ],
  },
  'lens-in': {
    title: 'The coupling lens',
    orders: [
      'Put a beam stop behind the fibre holder first.',
      'Expect a focus, and light that spreads behind it.',
      'Find the reflections of the lens with a card and block them.',
    ],
    hazards: [
      'laser-exit',
      'lens-focus',
      'lens-reflection',
      'past-the-facet',
      'skin-focus',
      'invisible-light',
    ],
  },
  'end-in': {
    title: 'The fibre’s end goes in',
    orders: [
      'Switch every source off at its driver, not only by its current knob, and unplug it.',
      'Only then look at the end, by eye or under a microscope.',
      'Clean it, put it in, and clamp the far end into a beam stop before you switch on again.',
    ],
    hazards: ['far-end-magnified', 'launch-end', 'facet-reflection', 'both-ends-live', 'glass-pieces'],
  },
  'find-light': {
    title: 'Looking for light at the far end',
    orders: [
      'Clamp the far end into a stop and look for light with a detector or a card.',
      'With light sent backwards, watch the launch end and the laser: it comes out there.',
      'Unplug the reference source before the laser goes on, unless its figure below says otherwise.',
    ],
    hazards: [
      'far-end',
      'back-light',
      'launch-end',
      'reference-receives',
      'both-ends-live',
      'invisible-light',
    ],
  },
  climb: {
    title: 'Climbing to the peak',
    orders: [
      'Stay at alignment power until the reading is stable.',
      'Expect a glow at ferrule and cladding: all that is not coupled ends there.',
      'Stop when you smell or see anything at the end, or when the reading falls by itself.',
    ],
    hazards: [
      'entry-scatter',
      'ferrule-load',
      'facet-load',
      'reference-receives',
      'laser-own-reflection',
      'fibre-fuse',
    ],
  },
  'full-power': {
    title: 'Raising the power',
    orders: [
      'Eyewear on, stops and covers in place, nobody else in the way.',
      'Raise it in steps, and wait at each.',
      'Watch for smell, glow and a drop in throughput; at any of them go back down.',
    ],
    // all of it
    hazards: [''],
  },
  'far-lens': {
    title: 'A lens at the far end',
    orders: [
      'Switch the laser off before you screw the lens on.',
      'Put a stop at the end of the room first: decimetres become tens or hundreds of metres.',
      'Aim it level, below every eye, at nothing that shines.',
    ],
    hazards: ['far-end', 'together-far-end', 'fibre-break'],
  },
  'in-use': {
    title: 'In use',
    orders: [
      'Close the path, and put caps on every connector that is not in use.',
      'Put a notice at every place where the fibre can be opened.',
      'Close a shutter or switch off before anything is unplugged.',
      'Watch for drift, and for reflections into the reference source.',
    ],
    hazards: [
      'far-end',
      'joint-',
      'bend-',
      'fibre-break',
      'reference-',
      'laser-own-reflection',
      'unmarked-fibre',
      'both-ends-live',
    ],
  },
  'pack-up': {
    title: 'Cleaving, stripping, cleaning, packing up',
    orders: [
      'Switch the source off and lock it before you touch an end.',
      'Wear glasses with side shields; laser eyewear is none against splinters unless it is marked so.',
      'Work over a dark mat, count the pieces into a closed container, search for none with your fingers.',
      'No food there; wash your hands; put caps on.',
    ],
    hazards: ['glass-pieces', 'both-ends-live', 'non-beam'],
  },
};

/**
 * The step that a number or a name means.
 *
 * @throws {Refusal} if there is none
 */
export function stepNamed(text: string): StepName {
  const byNumber = /^\d+$/u.test(text) ? stepNames[Number(text)] : undefined;
  const found = byNumber ?? stepNames.find((name) => name === text);
  if (found !== undefined) return found;
  throw new Refusal({
    where: '--step',
    what: `there is no step ${shown(text)}`,
    mend: `Write 0 to ${stepNames.length - 1}, or one of: ${stepNames.join(', ')}.`,
  });
}
