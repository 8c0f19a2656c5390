/** One hazard in terms, for a page that tells every one of them. */
import { limitSetNames } from '@coreward/optics';
import type { Block, Term } from '../ledger/section.ts';
import { writeValue } from '../units/write.ts';
import { atMostText, timesText, upToText } from './figures-of-caution.ts';
import type { Hazard } from './hazard.ts';
import { limitText, markMeanings, timeText, wavelengthText, weakestMark } from './limit-texts.ts';

/** Who is at risk, which light, number and limit, set, time and distance; what does not apply is left out. */
export function hazardTerms(hazard: Hazard, roomLength: number | null): readonly Term[] {
  const { atRisk, wavelength, invisible, limitSet, exposureTime, hazardDistance, from } = hazard;
  const light = wavelength === null ? null : wavelengthText(wavelength);
  return [
    { term: 'at risk', text: atRisk.join(', ') },
    ...(light === null && !invisible ? [] : [{ term: 'light', text: lightText(light, invisible) }]),
    ...numberTerms(hazard),
    ...(limitSet === null ? [] : [{ term: 'limit set', text: limitSetNames[limitSet] }]),
    ...(exposureTime === null ? [] : [{ term: 'time', text: timeText(exposureTime) }]),
    ...(hazardDistance === null
      ? []
      : [{ term: 'reaches', text: reachText(hazardDistance, from, roomLength) }]),
  ];
}

/** With which definitions, for which other times, taken for granted what, and resting on what. */
export function hazardEvidence(hazard: Hazard, roomLength: number | null): readonly Block[] {
  const { fine, asWritten, otherTimes, assumed, basis, from } = hazard;
  const items = [
    ...(asWritten === null
      ? []
      : [
          `For ${writeValue(asWritten.power, 'power', 3)} and sizes exactly as written, nothing added: ${reachText(asWritten.hazardDistance, from, roomLength)}.`,
        ]),
    ...otherTimes.map(
      ({ exposureTime, hazardDistance, wording }) =>
        `For ${timeText(exposureTime)}: ${reachText(hazardDistance, from, roomLength)} (${wording}).`,
    ),
    ...assumed.map((one) => `Taken for granted: ${one}.`),
    ...[...new Set(basis.map((one) => `[${weakestMark([one])}] ${one.source}`))],
  ];
  const marks = [...new Set(basis.map((one) => weakestMark([one])))];
  return [
    ...(fine === '' ? [] : [{ kind: 'text' as const, text: fine }]),
    ...(items.length === 0 ? [] : [{ kind: 'list' as const, numbered: false, items: [...new Set(items)] }]),
    ...(marks.length === 0
      ? []
      : [
          {
            kind: 'text' as const,
            text: `${marks.map((mark) => `[${mark}] ${markMeanings[mark]}`).join('; ')}.`,
          },
        ]),
  ];
}

function lightText(light: string | null, invisible: boolean): string {
  if (!invisible) return light ?? '';
  return light === null ? 'invisible light' : `${light}, invisible light`;
}

function numberTerms({ quantity, value, unit, limit, timesLimit }: Hazard): readonly Term[] {
  if (value === null || unit === null) return [];
  const times = timesLimit === null ? '' : `, ${timesText(timesLimit)} the limit`;
  const [met, allowed] =
    unit === '1'
      ? [`${atMostText(value, 'number')}`, limit === null ? null : limitText(limit, 'number')]
      : unit === 'W'
        ? [atMostText(value, 'power'), limit === null ? null : limitText(limit, 'power')]
        : [atMostText(value, 'irradiance'), limit === null ? null : limitText(limit, 'irradiance')];
  return [
    { term: 'estimate', text: `${met}: ${quantity}${times}` },
    ...(allowed === null ? [] : [{ term: 'limit', text: allowed }]),
  ];
}

function reachText(distance: number, from: string | null, roomLength: number | null): string {
  if (distance === 0) return 'nowhere above the limit assumed';
  return `above the limit ${upToText(distance, roomLength, from)}`;
}
