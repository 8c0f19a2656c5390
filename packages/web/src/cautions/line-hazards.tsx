import {
  answersFor,
  cautionsFor,
  hazardPlaces,
  type Launch,
  type LinePart,
  type PlaceOfHazards,
  withinRange,
} from '@coreward/bench';
import { type JSX, type KeyboardEvent, memo, useMemo, useState } from 'react';
import { PageLink } from '../frame/navigation.tsx';
import type { Run } from '../launch/way.ts';
import { cautionTexts } from '../texts/cautions.ts';
import { HazardLines } from './hazard-lines.tsx';
import { LevelMark } from './level-mark.tsx';
import { useCautionBook } from './use-caution-book.ts';
import './line-hazards.css';

export interface LineHazardsProps {
  /** Of the launch in the bench book. */
  readonly id: string;
  readonly launch: Launch;
  readonly parts: readonly LinePart[];
  readonly run: Run;
  /** Where each part's label is along the run, and how much room it has, CSS pixels. */
  readonly labels: ReadonlyMap<string, number>;
  readonly room: number;
}

/** Where on the line it can hurt: a mark of shape and word at each place, which unfolds what can happen there. */
export const LineHazards = memo(function LineHazards({
  id,
  launch,
  parts,
  run,
  labels,
  room,
}: LineHazardsProps): JSX.Element {
  const book = useCautionBook(id);
  const told = useMemo(
    () => withinRange(() => cautionsFor(launch, { answers: answersFor(launch, book.answers) })),
    [launch, book.answers],
  );
  const places = useMemo(() => (told.ok ? hazardPlaces(parts, told.value.hazards) : []), [parts, told]);
  const [open, setOpen] = useState<string | null>(null);
  const place = places.find(({ part }) => part === open) ?? null;
  const close = (): void => {
    document.getElementById(`hazards-${open}`)?.focus();
    setOpen(null);
  };
  return (
    <>
      {!told.ok && (
        <p className="line-note">
          {cautionTexts.unreadable}: {told.why}
        </p>
      )}
      <ol className={`hazard-marks ${run}`} aria-label={cautionTexts.marks}>
        {places.map((one) => {
          const at = labels.get(one.part);
          const style =
            at === undefined
              ? {}
              : run === 'across'
                ? { left: at - room / 2, width: room }
                : { top: at - room / 2, height: room };
          return (
            <li
              key={one.part}
              className={at === undefined ? 'hazard-place anywhere' : 'hazard-place'}
              style={style}
            >
              <Mark
                place={one}
                isOpen={one.part === open}
                onPress={() => setOpen(one.part === open ? null : one.part)}
              />
            </li>
          );
        })}
      </ol>
      {place !== null && (
        <section
          id="hazards-here"
          className="hazards-here"
          aria-label={`${cautionTexts.marks}: ${place.name}`}
          onKeyDown={(event: KeyboardEvent) => {
            if (event.key === 'Escape') close();
          }}
        >
          <h2>{place.name}</h2>
          <HazardLines hazards={place.hazards} />
          <p className="facts">
            <PageLink to={{ page: 'cautions', id }}>{cautionTexts.toCautions}</PageLink>
            <button type="button" className="quiet-button" onClick={close}>
              {cautionTexts.close}
            </button>
          </p>
        </section>
      )}
    </>
  );
});

function Mark({
  place: { part, name, level, hazards },
  isOpen,
  onPress,
}: {
  readonly place: PlaceOfHazards;
  readonly isOpen: boolean;
  readonly onPress: () => void;
}): JSX.Element {
  return (
    <button
      type="button"
      id={`hazards-${part}`}
      className="hazard-mark"
      data-level={level}
      aria-expanded={isOpen}
      aria-controls={isOpen ? 'hazards-here' : undefined}
      aria-label={cautionTexts.markLabel(level, name, hazards.length)}
      onClick={onPress}
    >
      <LevelMark level={level} /> <span>{part === 'bench' ? `${level}, ${name}` : level}</span>
    </button>
  );
}
