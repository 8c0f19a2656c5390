import {
  type Detector,
  detectorOf,
  detectorWatts,
  detectorWords,
  readBy,
  readsDetector,
} from '@coreward/bench';
import type { InstrumentDescription } from '@coreward/contract';
import { type JSX, useMemo } from 'react';
import { partsOf, type ShownPart } from '../drawer/parts.ts';
import { Pieces } from '../field/mend.tsx';
import { pathOf } from '../frame/address.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { detectorTexts as words } from '../texts/detector.ts';

/** The detector before an instrument that reads volts or amperes, and its light in watts with their doubt. */
export function DetectorWatts({
  instrument,
}: {
  readonly instrument: InstrumentDescription;
}): JSX.Element | null {
  const keeping = useKeeping();
  const state = useKept();
  const detectors = useMemo(() => detectorsOf(partsOf(state)), [state]);
  const { name, unit, lastReading, floor, noise } = instrument;
  if (!readsDetector(unit) || detectors.length === 0) return null;
  const chosen = detectors.find(({ detector }) => detector.readBy === name) ?? null;
  const light = lastReading?.value == null ? null : lastReading.value - (floor ?? 0);
  const watts = chosen === null || light === null ? null : detectorWatts(chosen.detector, unit, light, noise);
  const write = ({ id, kind, text, putAway, invented }: ShownPart, by: string | null, what: string): void =>
    keeping.change(
      { kind: 'part', id, part: kind },
      { text: readBy({ kind, text }, by).text, putAway, invented },
      what,
      pathOf({ page: 'instruments' }),
    );
  const choose = (id: string): void => {
    const next = detectors.find(({ part }) => part.id === id);
    if (chosen !== null) write(chosen.part, null, words.whatNone(chosen.detector.name));
    if (next !== undefined) write(next.part, name, words.what(next.detector.name, name));
  };
  return (
    <div className="detector-watts">
      <label className="setup-field">
        <span>{words.title}</span>
        <select value={chosen?.part.id ?? ''} onChange={({ target }) => choose(target.value)}>
          <option value="">{words.none}</option>
          {detectors.map(({ part, detector }) => (
            <option key={part.id} value={part.id}>
              {detector.name}
            </option>
          ))}
        </select>
      </label>
      {watts?.ok === true && (
        <p>
          <strong>{detectorWords(watts.power, chosen?.detector.at?.value ?? null)}</strong>{' '}
          <span className="quiet">{floor === null ? words.noFloor : words.overFloor}</span>
        </p>
      )}
      {watts?.ok === false && (
        <p className="advice">
          <Pieces text={`${watts.what}.`} /> <Pieces text={watts.mend} />
        </p>
      )}
    </div>
  );
}

function detectorsOf(
  parts: readonly ShownPart[],
): readonly { readonly part: ShownPart; readonly detector: Detector }[] {
  return parts.flatMap((part) => {
    const detector = part.putAway ? null : detectorOf(part);
    return detector === null ? [] : [{ part, detector }];
  });
}
