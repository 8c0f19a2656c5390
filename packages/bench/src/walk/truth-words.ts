/** What a practice bench hid, told once its walk is over. */
import { writeValue } from '../units/write.ts';
import { screwWords } from './move-words.ts';
import type { Screw } from './step.ts';

/** Where a practice bench stands in truth. */
export interface WalkTruth {
  /** Share of what the four screws can have, the focus left as it is. */
  readonly share: number;
  /** Share of the light that the focus leaves. */
  readonly focus: number;
  /** How far each screw stands from its place at the peak, turns; positive beyond it. */
  readonly offsets: readonly { readonly screw: Screw; readonly turns: number }[];
}

/** The truth in sentences. Screws may stand well off together and lose little: that is the ridge. */
export function truthTexts({ share, focus, offsets }: WalkTruth): readonly string[] {
  const stands = offsets.map(
    ({ screw, turns }) => `${screwWords(screw)} ${turns > 0 ? '+' : ''}${writeValue(turns, 'turns', 2)}`,
  );
  return [
    `In truth ${writeValue(share, 'fraction', 3)} of what these four screws can have is in.`,
    ...(focus < 0.995
      ? [`The focus leaves ${writeValue(focus, 'fraction', 3)} of the light, whatever the screws do.`]
      : []),
    `Off their places at the peak: ${stands.join(', ')}. Pairs that are off together lose little.`,
  ];
}
