import { assumedTime, isVisible, nearestEyeDistance, smallestCountedAngle } from '@coreward/optics';
import { writeValue } from '../units/write.ts';
import type { LimitAnswer } from './limit-answer.ts';
import { timeText } from './limit-texts.ts';

/** Shorter exposures are pulses, whose length is theirs; longer ones are no pulses. */
const shortestBeam = 1e-3;
const longestPulse = 0.25;

/** What must be said beside a limit, in words. Most important first. */
export function limitRemarks({ question, both }: LimitAnswer): readonly string[] {
  const { tissue, wavelength, exposureTime, sourceAngle } = question.exposure;
  const { harm } = both.governing;
  const ofTissue = tissue === 'skin' ? aboutSkin(wavelength) : [aboutEye];
  const isRaised =
    sourceAngle !== null && sourceAngle > smallestCountedAngle && harm === 'heat on the retina';
  return [
    ...(exposureTime >= shortestBeam ? aboutReaction(wavelength, exposureTime) : []),
    ...(exposureTime < longestPulse
      ? ['This is for one pulse by itself: each pulse of a train may be allowed less.']
      : []),
    ...(isRaised
      ? [
          'The size of the source raised this limit. That never holds for a laser beam or the end of a glass fibre.',
        ]
      : []),
    ...(wavelength <= 400e-9 && exposureTime > 10 ? ['Below 400 nm the dose counts for a whole day.'] : []),
    ...ofTissue,
  ];
}

function aboutReaction(wavelength: number, exposureTime: number): readonly string[] {
  const assumed = assumedTime('beam', wavelength).exposureTime;
  if (exposureTime >= Math.min(assumed, 100)) return [];
  const asked = `${timeText(exposureTime)} of a beam`;
  return [
    isVisible(wavelength)
      ? `${asked} relies on someone reacting, and few do in time: ask for ${timeText(assumed)}, too.`
      : `${asked} is too short to assume: nothing warns of light that is not seen. Ask for ${timeText(assumed)}.`,
  ];
}

const aboutEye =
  `No eye is taken to be closer than ${writeValue(nearestEyeDistance, 'length', 3, 'mm')}; a magnifier or a ` +
  'collimator breaks this and can bring all the power into it.';

function aboutSkin(wavelength: number): readonly string[] {
  return [
    'A focused spot is averaged all the same; a pinpoint burn, or fire, is possible below the limit.',
    ...(wavelength >= 1400e-9
      ? ['An exposed area above 0.01 m² has a lower limit, which is not computed here.']
      : []),
  ];
}
