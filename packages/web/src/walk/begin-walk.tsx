import { beforeWalkTexts, everyStep, readingOf, walkPlan, withinRange } from '@coreward/bench';
import type { ChosenReads, KeptWalk } from '@coreward/contract';
import { type JSX, useEffect, useMemo, useRef, useState } from 'react';
import { type Cautioned, Unreadable } from '../cautions/cautioned-launch.tsx';
import { StepView } from '../cautions/steps-page.tsx';
import type { InstrumentsHeld } from '../instrument/use-instruments.ts';
import { walkTexts } from '../texts/walk.ts';
import { ReadsChoice } from './reads-choice.tsx';
import type { WalkHeld } from './use-walk.ts';

/** How the walk is led, what tells the light, and what is read before a real bench is walked. */
export function BeginWalk({
  cautioned,
  held,
  instruments,
  isAnother,
}: {
  readonly cautioned: Cautioned;
  readonly held: WalkHeld;
  readonly instruments: InstrumentsHeld;
  /** Asked for from within a walk: the page is brought to the choice. */
  readonly isAnother: boolean;
}): JSX.Element {
  const { launch, answers, book } = cautioned;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (!isAnother) return;
    heading.current?.scrollIntoView();
    heading.current?.focus();
  }, [isAnother]);
  const [procedure, setProcedure] = useState<KeptWalk['procedure']>('ridge');
  const [reads, setReads] = useState<ChosenReads>({ by: 'typed' });
  const planned = useMemo(() => withinRange(() => walkPlan(launch)), [launch]);
  const told = useMemo(() => withinRange(() => everyStep(launch, { answers })), [launch, answers]);
  if (!planned.ok) return <Unreadable why={planned.why} />;
  if (!told.ok) return <Unreadable why={told.why} />;
  const steps = told.value.filter(({ step }) => step === 'find-light' || step === 'climb');
  const isRead = steps.every((step) => readingOf(book.read.get(step.step), step) === 'read');
  const words = walkTexts.begin;
  // by eye nothing is measured that a model could use
  const isByEye = reads.by === 'eye';
  const led = isByEye ? 'taught' : procedure;
  const how = { procedure: led, reads, goesOn: false } as const;
  return (
    <div className="walk-begin">
      <h2 ref={heading} tabIndex={-1}>
        {words.title}
      </h2>
      {beforeWalkTexts(planned.value).map((line) => (
        <p key={line}>{line}</p>
      ))}
      <ReadsChoice chosen={reads} instruments={instruments.instruments} onChoose={setReads} />
      <fieldset>
        <legend>{words.procedure}</legend>
        {(['ridge', 'taught'] as const).map((one) => (
          <label key={one}>
            <input
              type="radio"
              name="procedure"
              disabled={isByEye && one === 'ridge'}
              checked={led === one}
              onChange={() => setProcedure(one)}
            />{' '}
            {words[one]}
          </label>
        ))}
        <p className="quiet small">{isByEye ? words.whichByEye : words.whichWhen}</p>
      </fieldset>
      {held.said !== null && <p role="alert">{held.said}</p>}
      <section>
        <p className="quiet">{words.practiceText}</p>
        <button
          type="button"
          className="big act"
          disabled={held.busy}
          onClick={() => held.begin({ ...how, practice: { seed: null } })}
        >
          {words.practice}
        </button>
      </section>
      <section>
        <h2>{words.cautions}</h2>
        {steps.map((step) => (
          <StepView key={step.step} step={step} read={book.read.get(step.step)} enter={book.enter} />
        ))}
        {!isRead && <p id="read-first">{words.readFirst}</p>}
        <button
          type="button"
          className="big act"
          disabled={held.busy || !isRead}
          aria-describedby={isRead ? undefined : 'read-first'}
          onClick={() => held.begin({ ...how, practice: null })}
        >
          {words.real}
        </button>
      </section>
    </div>
  );
}
