import {
  learnedSenses,
  readOffset,
  type SteerAnswer,
  type SteerMove,
  type SteerPlan,
  type SteerStep,
  waysOf,
} from '@coreward/bench';
import { type FormEvent, type JSX, useId, useMemo, useState } from 'react';
import { steerTexts } from '../texts/steer.ts';
import { type CardsKept, noCardsKept, OffsetsByCamera } from './offsets-by-camera.tsx';

interface AnswerToProps {
  readonly step: SteerStep;
  readonly plan: SteerPlan;
  readonly moves: readonly SteerMove[];
  readonly cards: CardsKept;
  readonly onCards: (change: (cards: CardsKept) => CardsKept) => void;
  readonly answer: (answer: SteerAnswer) => void;
  /** A practice bench turns its screws when it is told to; null: a real one, or it has been. */
  readonly turnIt: (() => void) | null;
  readonly practised: boolean;
}

/** What can be answered to a step: large enough for a thumb. */
export function AnswerTo({
  step,
  plan,
  moves,
  cards,
  onCards,
  answer,
  turnIt,
  practised,
}: AnswerToProps): JSX.Element {
  switch (step.kind) {
    case 'sense':
      if (turnIt !== null) return <OneButton text={steerTexts.turnIt} press={turnIt} />;
      return (
        <fieldset className="choices steer-answers">
          <legend>{steerTexts.whichWay}</legend>
          {waysOf(step.screw).map((to) => (
            <button key={to} type="button" onClick={() => answer({ outcome: 'went', to })}>
              {steerTexts.went[to]}
            </button>
          ))}
        </fieldset>
      );
    case 'offsets':
      return <Offsets {...{ plan, moves, cards, onCards, answer }} />;
    case 'turn':
      return <DoneButton {...{ answer, practised }} />;
    case 'light':
      return <LightOrDark answer={answer} dark={steerTexts.dark} />;
    case 'raster':
      return step.move.do === 'line' ? (
        <LightOrDark answer={answer} dark={steerTexts.nothingOnLine} />
      ) : (
        <DoneButton {...{ answer, practised }} />
      );
  }
}

/** Offsets typed as an eye reads them, or read by a camera. */
function Offsets({
  plan,
  moves,
  cards,
  onCards,
  answer,
}: Omit<AnswerToProps, 'step' | 'turnIt' | 'practised'>): JSX.Element {
  const [byCamera, setByCamera] = useState(cards !== noCardsKept);
  const senses = useMemo(() => learnedSenses(moves), [moves]);
  return (
    <>
      <fieldset className="choices steer-choice">
        <legend>{steerTexts.how}</legend>
        {[false, true].map((camera) => (
          <button
            key={`${camera}`}
            type="button"
            aria-pressed={byCamera === camera}
            onClick={() => setByCamera(camera)}
          >
            {camera ? steerTexts.byCamera : steerTexts.typed}
          </button>
        ))}
      </fieldset>
      {byCamera ? (
        <OffsetsByCamera kept={cards} onKept={onCards} {...{ plan, senses, answer }} />
      ) : (
        <OffsetsForm answer={answer} />
      )}
    </>
  );
}

/** On a practice bench the press is the turn. */
function DoneButton({ answer, practised }: Pick<AnswerToProps, 'answer' | 'practised'>): JSX.Element {
  return (
    <OneButton
      text={practised ? steerTexts.doIt : steerTexts.done}
      press={() => answer({ outcome: 'did' })}
    />
  );
}

function OneButton({ text, press }: { readonly text: string; readonly press: () => void }): JSX.Element {
  return (
    <div className="choices steer-answers">
      <button type="button" onClick={press}>
        {text}
      </button>
    </div>
  );
}

function LightOrDark({
  answer,
  dark,
}: Pick<AnswerToProps, 'answer'> & { readonly dark: string }): JSX.Element {
  return (
    <div className="choices steer-answers">
      <button type="button" onClick={() => answer({ outcome: 'light' })}>
        {steerTexts.light}
      </button>
      <button type="button" onClick={() => answer({ outcome: 'dark' })}>
        {dark}
      </button>
    </div>
  );
}

const fields = [
  { name: 'nearX', card: 'nearCard', way: 'right' },
  { name: 'nearY', card: 'nearCard', way: 'upwards' },
  { name: 'farX', card: 'farCard', way: 'right' },
  { name: 'farY', card: 'farCard', way: 'upwards' },
] as const;
type FieldName = (typeof fields)[number]['name'];

/** Four offsets as typed, in millimetres. */
function OffsetsForm({ answer }: Pick<AnswerToProps, 'answer'>): JSX.Element {
  const id = useId();
  const [typed, setTyped] = useState<Readonly<Record<FieldName, string>>>({
    nearX: '',
    nearY: '',
    farX: '',
    farY: '',
  });
  const [refused, setRefused] = useState<Partial<Record<FieldName, string>>>({});
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const [nearX, nearY, farX, farY] = fields.map(({ name }) => readOffset(typed[name]));
    if (nearX?.ok && nearY?.ok && farX?.ok && farY?.ok) {
      setRefused({});
      answer({
        outcome: 'read',
        offsets: {
          near: { x: nearX.value, y: nearY.value },
          far: { x: farX.value, y: farY.value },
        },
      });
      return;
    }
    setRefused(
      Object.fromEntries(
        fields.flatMap(({ name }) => {
          const read = readOffset(typed[name]);
          return read.ok ? [] : [[name, `${read.what}. ${read.mend}`]];
        }),
      ),
    );
  };
  return (
    <form className="steer-offsets" onSubmit={submit} noValidate>
      {(['nearCard', 'farCard'] as const).map((of) => (
        <fieldset key={of}>
          <legend>{steerTexts[of]}</legend>
          {fields
            .filter(({ card }) => card === of)
            .map(({ name, card, way }) => (
              <div key={name} className="steer-field">
                <label htmlFor={`${id}-${name}`}>{steerTexts[way]}</label>
                <input
                  id={`${id}-${name}`}
                  type="text"
                  inputMode="text"
                  autoComplete="off"
                  aria-label={steerTexts.offsetLabel(steerTexts[card], steerTexts[way])}
                  aria-invalid={refused[name] === undefined ? undefined : true}
                  value={typed[name]}
                  onChange={({ target }) => setTyped({ ...typed, [name]: target.value })}
                />
                {refused[name] !== undefined && <p role="alert">{refused[name]}</p>}
              </div>
            ))}
        </fieldset>
      ))}
      <button type="submit">{steerTexts.enter}</button>
    </form>
  );
}
