import type { Forecast, Measurement, Remark } from '../forecast/expected.ts';
import { placeWords } from '../launch/place-words.ts';
import { writeValue } from '../units/write.ts';
import type { Block, Section } from './section.ts';

/** What to change, and what might mislead: a section each, if there is something to say. What limits stands on top. */
export function remarkSections({ remarks }: Forecast): readonly Section[] {
  const sections: readonly (readonly [Remark['kind'], string])[] = [
    ['change', 'What to change'],
    ['know', 'What might mislead you'],
  ];
  return sections.flatMap(([kind, heading]) => {
    const items = remarks.filter((remark) => remark.kind === kind).map(({ text }) => text);
    return items.length === 0 ? [] : [{ heading, blocks: [list(items)] }];
  });
}

/** Measurements that leave more of the range than this are not worth an evening; JSON has them all. */
const worthDoing = 0.96;
/** Nobody takes more in one evening. */
const mostTold = 4;

/** A measurement that is advised, and the words it is advised in; which gauge it takes stands beside them. */
export interface MeasurementTold {
  readonly text: string;
  readonly gauge: string;
  /** The key it is about: `laser.power`. */
  readonly quantity: string;
}

type Advice = Pick<Forecast, 'nextMeasurement' | 'launch'>;

/** What is worth measuring, the most telling first. */
export const measurementsTold = ({ nextMeasurement, launch }: Advice): readonly MeasurementTold[] =>
  nextMeasurement
    .filter(({ narrows }) => narrows <= worthDoing)
    .slice(0, mostTold)
    .map((one) => ({
      text: measurementText(one, launch.path),
      gauge: one.gauge,
      quantity: one.quantity,
    }));

/** What to measure next, the most telling first. */
export function measurementSection(advice: Advice): Section {
  const worth = measurementsTold(advice);
  const blocks: Block[] =
    worth.length === 0
      ? [{ kind: 'text', text: 'No single measurement would narrow the range by much.' }]
      : [
          {
            kind: 'text',
            text: 'The more telling first, each with what it makes of the range of the power:',
          },
          {
            kind: 'list',
            numbered: true,
            items: worth.map(({ text, gauge }) => `${text} The gauge: ${gauge}.`),
          },
        ];
  return { heading: 'What to measure next', blocks };
}

function measurementText({ quantity, how, narrows }: Measurement, path: Forecast['launch']['path']): string {
  const share = writeValue(narrows, 'fraction', 2);
  return `${placeWords(quantity, path)}: ${how}; narrows the range to ${share} of its width.`;
}

/** What was taken for granted because the document does not say, and how the overlap was computed. */
export function assumptionSection({ assumptions, coupling }: Forecast): Section {
  return {
    heading: 'Taken for granted',
    blocks: [list([...assumptions, `How the light taken was computed: ${coupling.methodNote}.`])],
  };
}

const list = (items: readonly string[]): Block => ({ kind: 'list', numbered: false, items });
