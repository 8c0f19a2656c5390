import {
  type Cards,
  cardsAt,
  cardsByRuler,
  fieldText,
  type Launch,
  ordinaryMeter,
  readDistance,
  readReadingError,
  readSeed,
  rulerLimits,
  type SteerLayout,
  type SteerMeter,
  seedFromId,
  startWords,
  steerMeterWords,
  steerPlan,
  usualCards,
  withinRange,
} from '@coreward/bench';
import { type JSX, useMemo, useState } from 'react';
import { steerTexts } from '../texts/steer.ts';
import { LengthField } from './length-field.tsx';
import { useSteerMeter } from './use-steer-meter.ts';

interface BeginProps {
  readonly launch: Launch;
  readonly layout: SteerLayout;
  /** Whether the cautions were read: a real bench needs it. */
  readonly isRead: boolean;
  /** As they stood in the steer before. */
  readonly cards: Cards | null;
  readonly newId: () => string;
  /** A beginning is on its way: a second one would take the place of what was answered in the first. */
  readonly busy: boolean;
  readonly begin: (cards: Cards, meter: SteerMeter, practice: number | null) => Promise<void>;
}

/** Where the cards stand, what is to be expected of them, and the beginning. */
export function Begin({
  launch,
  layout,
  isRead,
  cards: before,
  newId,
  begin,
  busy,
}: BeginProps): JSX.Element {
  const [cards, setCards] = useState<Cards>(() => before ?? usualCards(layout));
  const [seed, setSeed] = useState(() => `${seedFromId(newId())}`);
  const [seedFailed, setSeedFailed] = useState(false);
  const ruler = cardsByRuler(layout, cards);
  const limits = rulerLimits(layout);
  const meter = useSteerMeter(launch);
  const plan = useMemo(
    () => withinRange(() => steerPlan(launch, cards, layout, meter)),
    [launch, cards, layout, meter],
  );
  const practise = (): void => {
    const read = readSeed(seed);
    setSeedFailed(read === null);
    // a simulated bench has no meter of one's own
    if (read !== null) void begin(cards, ordinaryMeter, read);
  };
  return (
    <section aria-labelledby="steer-cards">
      <h2 id="steer-cards">{steerTexts.cards}</h2>
      <div className="steer-fields">
        <LengthField
          label={steerTexts.beforeLens}
          written={fieldText(ruler.beforeLens)}
          read={(text) => readDistance(text, limits.beforeLens.least, limits.beforeLens.most)}
          onEnter={(beforeLens) => setCards(cardsAt(layout, { ...ruler, beforeLens }, cards.readingError))}
        />
        <LengthField
          label={steerTexts.behindFarMirror}
          written={fieldText(ruler.behindFarMirror)}
          read={(text) => readDistance(text, limits.behindFarMirror.least, limits.behindFarMirror.most)}
          onEnter={(behindFarMirror) =>
            setCards(cardsAt(layout, { ...ruler, behindFarMirror }, cards.readingError))
          }
        />
        <LengthField
          label={steerTexts.readingError}
          written={fieldText(cards.readingError)}
          read={readReadingError}
          onEnter={(readingError) => setCards({ ...cards, readingError })}
        />
      </div>
      <p className="quiet">{steerTexts.cardsHint}</p>
      <h2>{steerTexts.forecast}</h2>
      {plan.ok ? (
        <ul className="steer-forecast">
          {startWords(plan.value).map((line) => (
            <li key={line}>{line}</li>
          ))}
          <li>{steerMeterWords(meter)}</li>
        </ul>
      ) : (
        <p role="alert">{plan.why}</p>
      )}
      {!isRead && <p className="quiet">{steerTexts.readFirst}</p>}
      <div className="choices">
        <button
          type="button"
          disabled={busy || !isRead || !plan.ok}
          onClick={() => void begin(cards, meter, null)}
        >
          {steerTexts.begin}
        </button>
        <button type="button" disabled={busy || !plan.ok} onClick={practise}>
          {steerTexts.practise}
        </button>
        <label className="steer-seed">
          <span>{steerTexts.seed}</span>
          <input
            type="text"
            inputMode="numeric"
            autoComplete="off"
            value={seed}
            aria-invalid={seedFailed ? true : undefined}
            onChange={({ target }) => setSeed(target.value)}
          />
        </label>
      </div>
      {seedFailed && <p role="alert">{steerTexts.seedRefused}</p>}
    </section>
  );
}
