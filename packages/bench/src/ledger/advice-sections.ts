import type { Forecast, Measurement, Remark } from '../forecast/expected.ts';
import { shareText } from './figures.ts';
import type { Block, Section } from './section.ts';

const remarkHeadings: Readonly<Record<Remark['kind'], string>> = {
  limits: 'What keeps light out',
  change: 'What to change',
  know: 'What might mislead you',
};

/** What limits the launch, what to change, what might mislead: a section each, if there is something to say. */
export function remarkSections({ remarks }: Forecast): readonly Section[] {
  return (['limits', 'change', 'know'] as const).flatMap((kind) => {
    const items = remarks.filter((remark) => remark.kind === kind).map(({ text }) => text);
    return items.length === 0 ? [] : [{ heading: remarkHeadings[kind], blocks: [list(items)] }];
  });
}

/** What to measure next, the most telling first. */
export function measurementSection({ nextMeasurement }: Forecast): Section {
  const blocks: Block[] =
    nextMeasurement.length === 0
      ? [{ kind: 'text', text: 'No single measurement would narrow the range by much.' }]
      : [{ kind: 'list', numbered: true, items: nextMeasurement.map(measurementText) }];
  return { heading: 'What to measure next', blocks };
}

function measurementText({ quantity, gauge, how, narrows }: Measurement): string {
  return `${quantity} (${gauge}): ${how}. Narrows the range of the power to ${shareText(narrows)} of its width.`;
}

/** What was taken for granted because the document does not say. */
export function assumptionSections({ assumptions }: Forecast): readonly Section[] {
  return assumptions.length === 0 ? [] : [{ heading: 'Taken for granted', blocks: [list(assumptions)] }];
}

const list = (items: readonly string[]): Block => ({ kind: 'list', numbered: false, items });
