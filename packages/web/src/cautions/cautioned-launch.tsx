import {
  type Answers,
  answersFor,
  type Launch,
  nobodyAppointed,
  nothingAnswered,
  readLaunch,
  standingLine,
  withinRange,
} from '@coreward/bench';
import type { JSX, ReactNode } from 'react';
import { useMemo } from 'react';
import { PageLink } from '../frame/navigation.tsx';
import { PageHeading } from '../frame/page-heading.tsx';
import { useLaunch } from '../keeping/use-keeping.ts';
import { launchName } from '../start/launch-name.ts';
import { cautionTexts } from '../texts/cautions.ts';
import { frameTexts } from '../texts/frame.ts';
import { startTexts } from '../texts/start.ts';
import { type CautionBook, useCautionBook } from './use-caution-book.ts';

/** What a page on cautions works on. */
export interface Cautioned {
  readonly launch: Launch;
  readonly answers: Answers;
  readonly book: CautionBook;
}

/** A page about one launch and what the bench book holds on its cautions. */
export function CautionedLaunch({
  id,
  title,
  children,
}: {
  readonly id: string;
  readonly title: (name: string) => string;
  readonly children: (cautioned: Cautioned) => ReactNode;
}): JSX.Element {
  const kept = useLaunch(id);
  const book = useCautionBook(id);
  const text = kept === null || kept === 'waiting' ? null : kept.text;
  const read = useMemo(() => (text === null ? null : withinRange(() => readLaunch(text, 'launch'))), [text]);
  const answers = useMemo(
    () => (read?.ok === true ? answersFor(read.value, book.answers) : nothingAnswered),
    [read, book.answers],
  );
  if (kept === 'waiting' || (book.state === 'waiting' && kept !== null)) {
    return <p className="quiet">{cautionTexts.waiting}</p>;
  }
  if (kept === null || text === null) {
    return (
      <>
        <PageHeading title={startTexts.launch.unknown} />
        <p>{startTexts.launch.unknownText}</p>
        <p>
          <PageLink to={{ page: 'start' }}>{frameTexts.unknown.way}</PageLink>
        </p>
      </>
    );
  }
  return (
    <div className="cautioned">
      <PageHeading title={title(launchName(text))} />
      <p className="facts no-print">
        <PageLink to={{ page: 'launch', id }}>{cautionTexts.back}</PageLink>
        <PageLink to={{ page: 'cautions', id }}>{cautionTexts.toCautions}</PageLink>
        <PageLink to={{ page: 'steps', id }}>{cautionTexts.toSteps}</PageLink>
        <button type="button" className="quiet-button" onClick={() => window.print()}>
          {cautionTexts.print}
        </button>
      </p>
      {book.state === 'failed' && <p role="alert">{cautionTexts.noBook}</p>}
      {read?.ok === true && children({ launch: read.value, answers, book })}
      {read?.ok === false && <Unreadable why={read.why} />}
    </div>
  );
}

/** Instead of cautions that cannot be worked out. */
export function Unreadable({ why }: { readonly why: string }): JSX.Element {
  return (
    <>
      <h2>{cautionTexts.unreadable}</h2>
      <p>{why.replaceAll('`', '')}</p>
      <p>{cautionTexts.whereMended}</p>
      <p>
        {standingLine} {nobodyAppointed}
      </p>
    </>
  );
}
