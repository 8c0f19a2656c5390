import {
  afterExposure,
  type Cautions,
  cautionsFor,
  countedHazards,
  type Hazard,
  lightAndEyewear,
  nobodyAppointed,
  readFirst,
  standingLine,
  withinRange,
} from '@coreward/bench';
import { type JSX, useMemo } from 'react';
import { Blocks } from '../launch/section-view.tsx';
import { cautionTexts } from '../texts/cautions.ts';
import { type Cautioned, CautionedLaunch, Unreadable } from './cautioned-launch.tsx';
import { HazardView } from './hazard-view.tsx';
import { QuestionView } from './question-view.tsx';
import './cautions.css';

/** Everything that can hurt on one bench, worst first, and what only its owner can tell. Made to be printed, too. */
export function CautionsPage({ id }: { readonly id: string }): JSX.Element {
  return (
    <CautionedLaunch id={id} title={cautionTexts.title}>
      {(cautioned) => <Told {...cautioned} />}
    </CautionedLaunch>
  );
}

function Told({ launch, answers, book }: Cautioned): JSX.Element {
  const told = useMemo(() => withinRange(() => cautionsFor(launch, { answers })), [launch, answers]);
  if (!told.ok) return <Unreadable why={told.why} />;
  const cautions = told.value;
  const { hazards, walk } = cautions;
  const { first, folded } = readFirst(hazards);
  const view = (hazard: Hazard, rank: number) => (
    <HazardView
      key={hazard.id}
      hazard={hazard}
      roomLength={walk.facts.roomLength}
      open={rank === 0 && hazard === first[0]}
    />
  );
  return (
    <>
      <WhoDecides cautions={cautions} />
      <section>
        <h2>{cautionTexts.list}</h2>
        <div className="hazards">{first.map(view)}</div>
        {folded.length > 0 && (
          <details className="folded">
            <summary>{cautionTexts.folded(countedHazards(folded))}</summary>
            <div className="hazards">{folded.map(view)}</div>
          </details>
        )}
      </section>
      <section>
        <h2>{cautionTexts.eyewear}</h2>
        <Blocks blocks={lightAndEyewear(cautions).blocks} />
      </section>
      <section>
        <h2>{cautionTexts.questions}</h2>
        <p>{cautionTexts.questionsIntro(launch.laser.name ?? 'this laser')}</p>
        <ol className="questions">
          {cautions.questions.map((question) => (
            <QuestionView
              key={question.id}
              launch={launch}
              question={question}
              kept={book.answers.get(question.id)}
              enter={book.enter}
            />
          ))}
        </ol>
      </section>
      <section>
        <h2>{cautionTexts.happened}</h2>
        <p>{afterExposure}</p>
      </section>
    </>
  );
}

/** Said once on a page, at its top. */
export function WhoDecides({ cautions }: { readonly cautions: Cautions }): JSX.Element {
  return (
    <p className="who-decides">
      {standingLine}
      {!cautions.walk.answers.yes.has('officer') && ` ${nobodyAppointed}`}
    </p>
  );
}
