import type { Forecast } from '../forecast/expected.ts';
import type { Section } from './section.ts';

/** Stands under every list of cautions, an empty one too. */
export const deferral =
  'Cautions inform, they certify nothing. Local rules and the person in charge of laser safety where you work decide.';

/** The hazards found on this bench, and who decides. */
export function cautionSection({ cautions }: Pick<Forecast, 'cautions'>): Section {
  const items = cautions.map(({ level, text }) => `${level}: ${text}`);
  return {
    heading: 'Cautions',
    blocks: [
      items.length === 0
        ? {
            kind: 'text',
            text: 'None was worked out for this launch. That says nothing about its light.',
          }
        : { kind: 'list', numbered: false, items },
      { kind: 'text', text: deferral },
    ],
  };
}
