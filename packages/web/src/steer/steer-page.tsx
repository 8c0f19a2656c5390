import {
  begunEntry,
  type Cards,
  everyStep,
  type Hazard,
  readBeforeSteer,
  readingOf,
  type SteerMeter,
  steerLayout,
  withinRange,
} from '@coreward/bench';
import { type JSX, useMemo, useState } from 'react';
import { type Cautioned, CautionedLaunch, Unreadable } from '../cautions/cautioned-launch.tsx';
import { WhoDecides } from '../cautions/cautions-page.tsx';
import { HazardLines } from '../cautions/hazard-lines.tsx';
import { StepView } from '../cautions/steps-page.tsx';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { steerTexts } from '../texts/steer.ts';
import { Begin } from './begin.tsx';
import { Session } from './session.tsx';
import { type SteerBook, useSteerBook } from './use-steer-book.ts';
import './steer.css';

/** The coarse alignment: two cards, reference light sent backwards, and at last light at the far end. */
export function SteerPage({ id }: { readonly id: string }): JSX.Element {
  return (
    <CautionedLaunch id={id} title={steerTexts.title}>
      {(cautioned) => <Told id={id} {...cautioned} />}
    </CautionedLaunch>
  );
}

/** What reaches the reference source is said at once, whatever is folded. */
const atTheReference = ({ id }: Hazard): boolean => id.startsWith('reference-receives');

function Told({ id, launch, answers, book }: Cautioned & { readonly id: string }): JSX.Element {
  const steers = useSteerBook(id);
  const told = useMemo(
    () =>
      withinRange(() => ({
        steps: everyStep(launch, { answers }).filter(({ step }) => readBeforeSteer.includes(step)),
        layout: steerLayout(launch),
      })),
    [launch, answers],
  );
  if (!told.ok) return <Unreadable why={told.why} />;
  const { steps, layout } = told.value;
  const [first] = steps;
  const practises = typeof steers.kept?.practice === 'number';
  const isRead = steps.every((step) => readingOf(book.read.get(step.step), step) === 'read');
  return (
    <>
      {first !== undefined && <WhoDecides cautions={first.cautions} />}
      {steers.kept === null && <p>{steerTexts.intro}</p>}
      <h2>{steerTexts.before}</h2>
      <HazardLines hazards={steps.flatMap(({ hazards }) => hazards.filter(atTheReference))} />
      {/* who practises has nothing connected; who has begun at the bench has read it */}
      <details className="more" key={`${practises}`} open={!isRead && !practises}>
        <summary>{steerTexts.steps}</summary>
        {steps.map((step) => (
          <StepView key={step.step} step={step} read={book.read.get(step.step)} enter={book.enter} />
        ))}
      </details>
      {steers.state === 'waiting' && <p className="quiet">{steerTexts.waiting}</p>}
      {steers.state === 'failed' && <p role="alert">{steerTexts.noBook}</p>}
      {steers.state === 'held' && <Steer {...{ id, launch, layout, isRead, steers }} />}
    </>
  );
}

function Steer({
  id,
  launch,
  layout,
  isRead,
  steers,
}: Pick<Cautioned, 'launch'> & {
  readonly id: string;
  readonly layout: ReturnType<typeof steerLayout>;
  readonly isRead: boolean;
  readonly steers: SteerBook;
}): JSX.Element {
  const { world } = useKeeping();
  const { launches, unkept } = useKept();
  const [anew, setAnew] = useState<string | null>(null);
  const [failed, setFailed] = useState(false);
  const [busy, setBusy] = useState(false);
  const { kept } = steers;
  // what is not kept yet has no version to come back to
  const isKept = !unkept.some(({ thing }) => thing.kind === 'launch' && thing.id === id);
  const newest = isKept ? (launches.get(id)?.version ?? null) : null;
  if (kept === null || anew === kept.session) {
    const begin = async (cards: Cards, meter: SteerMeter, practice: number | null): Promise<void> => {
      const begun = { session: world.newId(), cards, version: newest, meter, practice };
      setBusy(true);
      setFailed(!(await steers.enter(begunEntry(begun))));
      setBusy(false);
    };
    return (
      <>
        <Begin {...{ launch, layout, isRead, begin, busy }} cards={kept?.cards ?? null} newId={world.newId} />
        {failed && <p role="alert">{steerTexts.notKept}</p>}
      </>
    );
  }
  return (
    <Session
      key={kept.session}
      {...{ id, launch, kept, steers }}
      before={kept.version === newest ? null : kept.version}
      again={() => setAnew(kept.session)}
    />
  );
}
