import { type ShortCaution, whoDecides } from '../caution/short-cautions.ts';
import type { Section } from './section.ts';

/** The hazards found on this bench, and who decides, once. */
export function cautionSection({ cautions }: { readonly cautions: readonly ShortCaution[] }): Section {
  const items = cautions
    .filter(({ id }) => id !== whoDecides.id)
    .map(({ level, text }) => `${level}: ${text}`);
  return {
    heading: 'Cautions',
    blocks: [
      items.length === 0
        ? {
            kind: 'text',
            text: 'None was worked out for this launch. That says nothing about its light.',
          }
        : { kind: 'list', numbered: false, items },
      { kind: 'text', text: whoDecides.text },
    ],
  };
}
