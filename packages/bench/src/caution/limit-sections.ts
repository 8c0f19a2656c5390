import { limitSetNames, limitSetTitles, listed, powerAtLimit, smallestCountedAngle } from '@coreward/optics';
import type { Block, Section, Term } from '../ledger/section.ts';
import { writeValue } from '../units/write.ts';
import type { LimitAnswer } from './limit-answer.ts';
import { limitRemarks } from './limit-remarks.ts';
import { harmTexts, limitText, timeText, wavelengthText, weakestMark } from './limit-texts.ts';
import { sourcesSection } from './sources-section.ts';
import { standingLine } from './standing-line.ts';

/** Whoever asks for a limit alone compares it with a table: as many digits as those print. */
const tableDigits = 4;

/** A limit in words and tables: what governs, what both sets say, how sure it is, and who decides. */
export function limitSections(answer: LimitAnswer): readonly Section[] {
  return [
    governingSection(answer),
    setsSection(answer),
    sourcesSection(
      listed(answer.both).flatMap((limit) => limit.basis),
      'a limit has the mark of its weakest source',
    ),
    { heading: 'Who decides', blocks: [{ kind: 'text', text: standingLine }] },
  ];
}

function governingSection(answer: LimitAnswer): Section {
  const { question, both } = answer;
  const { tissue, wavelength, exposureTime } = question.exposure;
  const { governing, isTie } = both;
  const stop = writeValue(governing.averagingDiameter, 'length');
  const said = isTie
    ? 'both sets say the same'
    : `${limitSetNames[governing.set]} governs: it is the lower of two sets`;
  const remarks = limitRemarks(answer);
  return {
    heading: `Limit for the ${tissue}: ${wavelengthText(wavelength)}, ${timeText(exposureTime)}`,
    blocks: [
      {
        kind: 'text',
        text: `${limitText(governing.irradiance, 'irradiance', tableDigits)}, or ${limitText(governing.radiantExposure, 'radiantExposure', tableDigits)} (estimate); ${said}.`,
      },
      {
        kind: 'terms',
        rows: [
          {
            term: 'averaged',
            text: `over a round stop of ${stop}${tissue === 'eye' && governing.averagingDiameter === 7e-3 ? ', whatever the real pupil' : ''}; ${limitText(powerAtLimit(governing), 'power', tableDigits)} through it is the limit assumed for ${timeText(exposureTime)}`,
          },
          { term: 'protects', text: harmTexts[governing.harm] },
          sourceTerm(answer),
        ],
      },
      ...(remarks.length === 0 ? [] : [{ kind: 'list', numbered: false, items: remarks } satisfies Block]),
    ],
  };
}

function sourceTerm({ question }: LimitAnswer): Term {
  const { tissue, sourceAngle } = question.exposure;
  const point = writeValue(smallestCountedAngle, 'angle');
  if (tissue === 'skin') return { term: 'source', text: 'its size plays no part for the skin' };
  return {
    term: 'source',
    text:
      sourceAngle === null
        ? `a point, ${point} or less, is assumed: its limits are the lowest`
        : `seen under ${writeValue(sourceAngle, 'angle')}, full angle, as asked`,
  };
}

function setsSection({ both }: LimitAnswer): Section {
  return {
    heading: 'Both sets; the lower one governs',
    blocks: [
      {
        kind: 'table',
        columns: [
          { heading: '', align: 'left' },
          { heading: 'irradiance', align: 'right' },
          { heading: 'exposure', align: 'right' },
          { heading: 'stop', align: 'right' },
          { heading: 'mark', align: 'left' },
        ],
        rows: listed(both).map((limit) => ({
          kind: 'cells',
          cells: [
            limitSetNames[limit.set],
            limitText(limit.irradiance, 'irradiance', tableDigits),
            limitText(limit.radiantExposure, 'radiantExposure', tableDigits),
            writeValue(limit.averagingDiameter, 'length'),
            `[${weakestMark(limit.basis)}]`,
          ],
        })),
      },
      {
        kind: 'list',
        numbered: false,
        items: listed(both).map(({ set, formula }) => `${formula}: ${limitSetTitles[set]}.`),
      },
    ],
  };
}
