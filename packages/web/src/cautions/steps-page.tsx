import {
  cautionOfStep,
  everyStep,
  type KeptReading,
  readingOf,
  type StepCautions,
  unbroken,
  withinRange,
} from '@coreward/bench';
import { type JSX, useMemo, useState } from 'react';
import { timeText } from '../frame/time-text.ts';
import { cautionTexts } from '../texts/cautions.ts';
import { type Cautioned, CautionedLaunch, Unreadable } from './cautioned-launch.tsx';
import { WhoDecides } from './cautions-page.tsx';
import { HazardLines } from './hazard-lines.tsx';
import type { CautionBook } from './use-caution-book.ts';
import './cautions.css';

/** What to read before each step of the work, with the numbers of this bench; ticked off in the bench book. */
export function StepsPage({ id }: { readonly id: string }): JSX.Element {
  return (
    <CautionedLaunch id={id} title={cautionTexts.stepsTitle}>
      {(cautioned) => <Told {...cautioned} />}
    </CautionedLaunch>
  );
}

function Told({ launch, answers, book }: Cautioned): JSX.Element {
  const told = useMemo(() => withinRange(() => everyStep(launch, { answers })), [launch, answers]);
  if (!told.ok) return <Unreadable why={told.why} />;
  const steps = told.value;
  const [first] = steps;
  return (
    <>
      {first !== undefined && <WhoDecides cautions={first.cautions} />}
      <p>{cautionTexts.stepsIntro}</p>
      {steps.map((step) => (
        <StepView key={step.step} step={step} read={book.read.get(step.step)} enter={book.enter} />
      ))}
    </>
  );
}

/** One step with its numbers and hazards, to be ticked off. */
export function StepView({
  step,
  read,
  enter,
}: {
  readonly step: StepCautions;
  readonly read: KeptReading | undefined;
  readonly enter: CautionBook['enter'];
}): JSX.Element {
  const [failed, setFailed] = useState(false);
  // shown at once: who sees the tick vanish until the station has answered ticks again, and takes it off
  const [asked, setAsked] = useState<boolean | null>(null);
  const reading = readingOf(read, step);
  const title = `${step.number} ${step.title}`;
  const tick = async (isRead: boolean): Promise<void> => {
    if (asked !== null) return;
    setAsked(isRead);
    const done = isRead
      ? await enter('caution read', {
          caution: cautionOfStep(step.step),
          text: title,
          key: step.readAgainKey,
        })
      : read === undefined || (await enter('withdrawn', { entry: read.entry }));
    setFailed(!done);
    setAsked(null);
  };
  return (
    <section className="work-step" data-reading={reading} aria-labelledby={`step-${step.step}`}>
      <h2 id={`step-${step.step}`}>{title}</h2>
      <ol>
        {step.orders.map((order) => (
          <li key={order}>{unbroken(order)}</li>
        ))}
      </ol>
      {step.numbers.length > 0 && (
        <>
          <h3>{cautionTexts.numbers}</h3>
          <ul>
            {step.numbers.map((one) => (
              <li key={one}>{unbroken(one)}</li>
            ))}
          </ul>
        </>
      )}
      {step.hazards.length > 0 && (
        <details className="more" open={step.hazards.length <= 8}>
          <summary>{cautionTexts.hurts}</summary>
          <HazardLines hazards={step.hazards} />
        </details>
      )}
      <p className="reading">
        <label>
          <input
            type="checkbox"
            checked={asked ?? reading === 'read'}
            onChange={({ target }) => void tick(target.checked)}
            aria-describedby={`read-${step.step}`}
          />{' '}
          {cautionTexts.read}
        </label>{' '}
        <span id={`read-${step.step}`} className="quiet">
          {read === undefined
            ? cautionTexts.notRead
            : reading === 'read'
              ? cautionTexts.readAt(timeText(read.time))
              : cautionTexts.readForAnother(timeText(read.time))}
        </span>
      </p>
      {failed && <p role="alert">{cautionTexts.notKept}</p>}
    </section>
  );
}
