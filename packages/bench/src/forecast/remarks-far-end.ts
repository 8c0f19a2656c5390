import { writeValue } from '../units/write.ts';
import { outputTipDistance } from './budget.ts';
import { asStated } from './draw.ts';
import type { Remark } from './expected.ts';
import type { StatedBench } from './stated-bench.ts';
import type { Told } from './told.ts';
import { focalLengthFor } from './way-to-the-facet.ts';

/** What the far end says: the output lens's focus, and the reference source. */
export function farEndRemarks(told: Told, bench: StatedBench): readonly Remark[] {
  return [...outputFocus(told, bench), ...reference(told)];
}

function outputFocus({ launch, output }: Told, { meeting }: StatedBench): readonly Remark[] {
  if (launch.output === null) return [];
  const tip = outputTipDistance(launch, meeting.wavelength, asStated);
  const focalLength = focalLengthFor(launch.output.collimator, meeting.wavelength, asStated);
  const move = tip === null ? 0 : focalLength - tip;
  // out of focus by less than a Rayleigh range of the end's own light changes nothing one could see
  const depth = (meeting.wavelength * focalLength ** 2 * 4) / (Math.PI * output.diameter ** 2);
  if (tip === null || Math.abs(move) < depth) return [];
  const way = move < 0 ? 'towards the lens' : 'away from the lens';
  return [
    {
      id: 'output-refocus',
      kind: 'change',
      text: `The output collimator is set for other light: its beam comes to a waist and spreads. For collimated light move the fibre end ${writeValue(Math.abs(move), 'length', 2)} ${way}.`,
    },
  ];
}

function reference({ launch }: Told): readonly Remark[] {
  const { reference } = launch;
  if (reference === null || reference.tolerates !== null) return [];
  return [
    {
      id: 'reference-unplug-first',
      kind: 'know',
      text: 'Nobody knows what power the reference source at the far end stands: unplug it before the laser is launched.',
    },
  ];
}
