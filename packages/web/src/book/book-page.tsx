import { unbroken } from '@coreward/bench';
import { routes, type WriteEntry } from '@coreward/contract';
import { type FormEvent, type JSX, useRef, useState } from 'react';
import { PageLink } from '../frame/navigation.tsx';
import { PageHeading } from '../frame/page-heading.tsx';
import { dayText, hourText } from '../frame/time-text.ts';
import { ask } from '../keeping/client.ts';
import { launchesOf, useKeeping, useKept } from '../keeping/use-keeping.ts';
import { bookTexts } from '../texts/book.ts';
import { drawerTexts } from '../texts/drawer.ts';
import { type BookLine, byDay, entryText, gaugeIn } from './book-line.ts';
import { useBook } from './use-book.ts';
import './book.css';

/** What was done on the bench, day by day; a page of it can be printed. */
export function BookPage(): JSX.Element {
  const lines = useBook();
  return (
    <>
      <PageHeading title={bookTexts.title} />
      <p>
        {bookTexts.intro}{' '}
        <button type="button" className="quiet-button" onClick={() => window.print()}>
          {bookTexts.print}
        </button>
      </p>
      <NoteForm />
      {lines === null && <p className="quiet">{bookTexts.waiting}</p>}
      {lines === 'failed' && <p role="alert">{bookTexts.failed}</p>}
      {Array.isArray(lines) && (lines.length === 0 ? <p>{bookTexts.empty}</p> : <Days lines={lines} />)}
    </>
  );
}

function Days({ lines }: { readonly lines: readonly BookLine[] }): JSX.Element {
  return (
    <>
      {byDay(lines, dayText).map(([day, own]) => (
        <section key={day} className="book-day">
          <h2>{day}</h2>
          <ol>
            {own.map((line) => (
              <li key={keyOf(line)} className="book-line">
                <time dateTime={line.time}>{hourText(line.time)}</time>
                <Line line={line} />
              </li>
            ))}
          </ol>
        </section>
      ))}
    </>
  );
}

function Line({ line }: { readonly line: BookLine }): JSX.Element {
  switch (line.kind) {
    case 'version':
      return <Version line={line} />;
    case 'invented':
      return (
        <div>
          {bookTexts.inventedLaidIn}{' '}
          <span className="quiet">{unbroken(line.parts.map(({ name }) => name).join('; '))}</span>
        </div>
      );
    case 'entry':
      return <Entry line={line} />;
  }
}

function keyOf(line: BookLine): string {
  switch (line.kind) {
    case 'version':
      return `${line.version.id} ${line.version.version}`;
    case 'invented':
      return line.kind;
    case 'entry':
      return line.entry.id;
  }
}

function Version({
  line: { version: one, what },
}: {
  readonly line: Extract<BookLine, { kind: 'version' }>;
}): JSX.Element {
  const { id } = one;
  const isPart = 'kind' in one;
  return (
    <div>
      {isPart && <span className="quiet">{drawerTexts.kinds[one.kind].one} </span>}
      <PageLink to={isPart ? { page: 'drawer', part: id } : { page: 'launch', id }}>
        {unbroken(one.name)}
      </PageLink>
      ,{' '}
      <PageLink to={{ page: isPart ? 'part-versions' : 'versions', id }} className="quiet">
        {bookTexts.version(one.version)}
      </PageLink>
      <ul>
        {what.map((one) => (
          <li key={one}>{unbroken(one)}</li>
        ))}
      </ul>
    </div>
  );
}

function Entry({
  line: { entry, withdrawn, practised },
}: {
  readonly line: Extract<BookLine, { kind: 'entry' }>;
}): JSX.Element {
  const keeping = useKeeping();
  const { launches } = useKept();
  const about = entry.launch === null ? null : launches.get(entry.launch);
  const text = entryText(entry);
  const gauge = gaugeIn(entry);
  const withdraw = (): void => {
    const write = {
      write: keeping.world.newId(),
      kind: 'withdrawn',
      launch: entry.launch,
      data: { entry: entry.id },
    };
    ask(keeping.world, routes.writeEntry, {}, write).catch(() => {});
  };
  return (
    <div>
      <span className="quiet">{entry.kind}</span>{' '}
      {practised && <span className="mark">{bookTexts.practice}</span>}{' '}
      {withdrawn ? <s>{unbroken(text)}</s> : unbroken(text)}{' '}
      {withdrawn && <span className="mark">{bookTexts.withdrawn}</span>}
      {about !== undefined && about !== null && (
        <PageLink to={{ page: 'launch', id: about.id }} className="quiet">
          {about.name}
        </PageLink>
      )}{' '}
      {gauge !== null && (
        <PageLink to={{ page: 'gauge', gauge, about: { kind: 'reading', id: entry.id } }} className="quiet">
          {bookTexts.openReadings}
        </PageLink>
      )}{' '}
      {!withdrawn && entry.kind === 'note' && (
        <button
          type="button"
          className="quiet-button"
          aria-label={bookTexts.withdrawLabel(text)}
          onClick={withdraw}
        >
          {bookTexts.withdraw}
        </button>
      )}
    </div>
  );
}

const storeKey = 'coreward.draft.note';

/** A note for the bench book; it stays in the form, under its one name, until the station has it. */
function NoteForm(): JSX.Element {
  const keeping = useKeeping();
  const launches = launchesOf(useKept()).filter(({ putAway }) => !putAway);
  const { session } = keeping.world;
  const [text, setText] = useState(() => session.getItem(storeKey) ?? '');
  const [about, setAbout] = useState('');
  const [write, setWrite] = useState<string | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const type = (next: string): void => {
    setText(next);
    setWrite(null);
    setSaid(null);
    try {
      session.setItem(storeKey, next);
    } catch {
      // it is still on the page
    }
  };
  const newest = useRef(text);
  newest.current = text;
  const enter = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (text.trim() === '') return;
    const name = write ?? keeping.world.newId();
    setWrite(name);
    const launch = about === '' ? null : about;
    const entry: WriteEntry = { write: name, kind: 'note', launch, data: { text: text.trim() } };
    try {
      await ask(keeping.world, routes.writeEntry, {}, entry);
      // the next note may have been begun meanwhile
      if (newest.current === text) type('');
      setSaid(bookTexts.noteKept);
    } catch {
      setSaid(bookTexts.noteNotKept);
    }
  };
  return (
    <form className="note-form no-print" onSubmit={(event) => void enter(event)}>
      <label>
        {bookTexts.addNote}
        <input
          type="text"
          aria-label={bookTexts.noteLabel}
          maxLength={2000}
          value={text}
          onChange={({ target }) => type(target.value)}
        />
      </label>
      <label>
        {bookTexts.noteFor}
        <select value={about} onChange={({ target }) => setAbout(target.value)}>
          <option value="">{bookTexts.noLaunch}</option>
          {launches.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <button type="submit">{bookTexts.keepNote}</button>
      <span role="status">{said}</span>
    </form>
  );
}
