import { acrylicMixing } from '@coreward/optics';
import { writeInterval, writeValue } from '../units/write.ts';
import { outputTipDistance } from './budget.ts';
import { asStated } from './draw.ts';
import type { Remark } from './expected.ts';
import { endLight } from './far-end.ts';
import type { StatedBench } from './stated-bench.ts';
import type { Told } from './told.ts';
import { focalLengthFor } from './way-to-the-facet.ts';

/** What the far end says: the output lens's focus, and the reference source. */
export function farEndRemarks(told: Told, bench: StatedBench): readonly Remark[] {
  return [...outputFocus(told, bench), ...plasticMixes(told, bench), ...reference(told)];
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

function plasticMixes({ launch }: Told, bench: StatedBench): readonly Remark[] {
  const spread = (mixing: number): number => 2 * endLight(launch, bench, mixing).halfAngle;
  const [low, high] = [spread(acrylicMixing.low), spread(acrylicMixing.high)];
  // silica mixes nothing, and what is filled already stays as it is
  if (high < 1.1 * low) return [];
  const range = writeInterval(low, high, 'angle', 2, '°');
  return [
    {
      id: 'plastic-mixes',
      kind: 'know',
      text: `Plastic mixes its modes on the way, one fibre faster than another: by the bare end the light spreads by ${range} (full angle), however little it did where it came in.`,
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
