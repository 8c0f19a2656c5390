import {
  type CameraLooks,
  type CardReading,
  type CardSpot,
  cardReading,
  firstMarks,
  lackWords,
  liveTurns,
  liveTurnWords,
  type MeanSpot,
  movingBeam,
  type PictureSize,
  type ScaleAsked,
  type ScrewSenses,
  type SteerCard,
  type SteerPlan,
  scaleAsked,
  wanderText,
} from '@coreward/bench';
import { type JSX, useEffect, useState } from 'react';
import { MarksOver } from '../camera/marks-over.tsx';
import { PictureChoice } from '../camera/picture-choice.tsx';
import { StillPicture } from '../camera/still-picture.tsx';
import { steerTexts } from '../texts/steer.ts';
import { CardScaleForm } from './card-scale-form.tsx';
import type { CardReader } from './use-card-reader.ts';

const words = steerTexts.camera;

type Beam = 'forward' | 'reverse';

/** What stays of one card while the steer's page is open: the camera may come back to it. */
export interface CardKept {
  readonly scale: ScaleAsked;
  readonly looks: CameraLooks;
  /** The spot that does not move as this card's mirror is turned. */
  readonly still: MeanSpot | null;
  /** What was read at last. */
  readonly reading: CardReading | null;
}

/** Changes what is kept by then: pictures come late, and marks and figures change while they are taken. */
type OnKept = (change: (now: CardKept) => CardKept) => void;

export const nothingKept: CardKept = {
  scale: { by: 'ruler', marks: [], length: '' },
  looks: 'downstream',
  still: null,
  reading: null,
};

interface CardByCameraProps {
  readonly card: SteerCard;
  readonly plan: SteerPlan;
  readonly senses: ScrewSenses;
  readonly reader: CardReader;
  /** Of the camera's picture; null: it is closed. */
  readonly size: PictureSize | null;
  readonly kept: CardKept;
  readonly onKept: OnKept;
}

/** One card under a camera: its scale, the spot that stays, and how far the other one lies from it, live. */
export function CardByCamera({
  card,
  plan,
  senses,
  reader,
  size,
  kept,
  onKept,
}: CardByCameraProps): JSX.Element {
  const { scale, looks, still, reading } = kept;
  const read = scaleAsked(scale);
  const moves = movingBeam(plan, card);
  const stays: Beam = moves === 'forward' ? 'reverse' : 'forward';
  const { live, taken } = reader;
  const now = live?.kind === 'spot' ? between(kept, moves, live.spot) : null;
  return (
    <section className="card-by-camera" aria-label={steerTexts[card === 'near' ? 'nearCard' : 'farCard']}>
      <CardScaleForm
        asked={scale}
        read={read}
        size={size}
        onAsk={(asked) => onKept((before) => ({ ...before, scale: asked, reading: null }))}
      />
      <label className="card-looks">
        {words.looks}{' '}
        <select
          value={looks}
          onChange={({ target }) =>
            onKept((before) => ({
              ...before,
              looks: target.value === 'upstream' ? 'upstream' : 'downstream',
              reading: null,
            }))
          }
        >
          <option value="downstream">{words.downstream}</option>
          <option value="upstream">{words.upstream}</option>
        </select>
      </label>
      {size !== null && (
        <>
          <ol className="card-steps">
            <li>
              <p>{words.keepStill[stays]}</p>
              {plan.reverse?.modes !== 1 && stays === 'reverse' && <p className="quiet">{words.moveFibre}</p>}
              <button
                type="button"
                disabled={taken !== null}
                onClick={() =>
                  reader.take((mean) => onKept((before) => ({ ...before, still: mean, reading: null })))
                }
              >
                {words.keep[stays]}
              </button>{' '}
              {still !== null && (
                <span className="quiet">
                  {words.keptSpot(still.count)}
                  {read.ok &&
                    read.scale.kind === 'pixel' &&
                    ` ${words.wandered(wanderText(still, read.scale.pixel))}`}
                </span>
              )}
            </li>
            <li>
              <p>{words.watch[moves]}</p>
              <button
                type="button"
                disabled={taken !== null || now === null}
                onClick={() =>
                  reader.take((mean) =>
                    onKept((before) => ({ ...before, reading: between(before, moves, mean.spot) })),
                  )
                }
              >
                {words.takeOffset}
              </button>
            </li>
          </ol>
          <div className="camera-live" role="status">
            {taken !== null && (
              <p>
                {words.taking(taken, reader.of)}{' '}
                <button type="button" className="quiet-button" onClick={reader.stop}>
                  {words.stop}
                </button>
              </p>
            )}
            {live?.kind === 'lack' && (
              <p className="refusal">
                {lackWords(live.lack).what}. {lackWords(live.lack).mend}
              </p>
            )}
            {live?.kind === 'spot' && still === null && <p>{words.seen}</p>}
            {!read.ok && still !== null && <p className="advice">{words.scaleMissing}</p>}
          </div>
          {now !== null && (
            <ul className="camera-live" aria-label={words.liveLabel}>
              {liveTurns(now, card, plan, senses).map((turn) => (
                <li key={turn.axis}>{liveTurnWords(turn, moves)}</li>
              ))}
            </ul>
          )}
        </>
      )}
      {size === null && <CardByFile {...{ kept, onKept, reader }} />}
      {reading !== null && <p className="card-read">{words.read(steerTexts.offsetIs(reading))}</p>}
    </section>
  );
}

/** How far a spot lies from the one that stays; null: the scale or that one is missing. */
function between({ scale, looks, still }: CardKept, moves: Beam, moving: CardSpot): CardReading | null {
  const read = scaleAsked(scale);
  if (!read.ok || still === null) return null;
  const [forward, reverse] = moves === 'forward' ? [moving, still.spot] : [still.spot, moving];
  return cardReading(forward, reverse, read.scale, looks);
}

/** The marks of a card's scale and the spots, over whatever shows it. */
export function CardOver({
  size,
  kept,
  onKept,
  live,
}: {
  readonly size: PictureSize;
  readonly kept: CardKept;
  readonly onKept: OnKept;
  readonly live: CardSpot | null;
}): JSX.Element {
  const { scale, still } = kept;
  const { marks, by } = scale;
  const { width, height } = size;
  useEffect(() => {
    // marks are there to be dragged as soon as there is a picture to drag them on
    const offered = firstMarks(by, { width, height });
    if (marks.length > 0 || offered.length === 0) return;
    onKept((now) => (now.scale.marks.length > 0 ? now : { ...now, scale: { ...now.scale, marks: offered } }));
  }, [marks, by, width, height, onKept]);
  return (
    <MarksOver
      size={size}
      marks={marks}
      onMarks={(moved) => onKept((now) => ({ ...now, scale: { ...now.scale, marks: moved }, reading: null }))}
      spots={[
        ...(still === null ? [] : [{ name: 'kept' as const, spot: still.spot }]),
        ...(live === null ? [] : [{ name: 'live' as const, spot: live }]),
      ]}
    />
  );
}

/** Two pictures of a card instead of a live one. */
function CardByFile({
  kept,
  onKept,
  reader,
}: Pick<CardByCameraProps, 'kept' | 'onKept' | 'reader'>): JSX.Element {
  const [files, setFiles] = useState<Readonly<Record<Beam, File | null>>>({ forward: null, reverse: null });
  const [refused, setRefused] = useState<readonly string[]>([]);
  const shown = files.reverse ?? files.forward;
  const measure = async (both: Readonly<Record<Beam, File | null>>): Promise<void> => {
    const { forward, reverse } = both;
    const read = scaleAsked(kept.scale);
    if (forward === null || reverse === null) return;
    if (!read.ok) {
      setRefused([read.why]);
      return;
    }
    const found = [await reader.inFile(forward), await reader.inFile(reverse)] as const;
    const spots = found.map((one, rank): CardSpot | string => {
      const name = words.beams[rank === 0 ? 'forward' : 'reverse'];
      if (one.kind === 'refused') return `${name}: ${one.what}. ${one.mend}`;
      if (one.read.kind === 'spot') return one.read.spot;
      const { what, mend } = lackWords(one.read.lack);
      return `${name}: ${what}. ${mend}`;
    });
    const [first, second] = spots;
    const isAlike =
      found[0].kind !== 'read' ||
      found[1].kind !== 'read' ||
      (found[0].size.width === found[1].size.width && found[0].size.height === found[1].size.height);
    setRefused([...spots.filter((one) => typeof one === 'string'), ...(isAlike ? [] : [words.notAlike])]);
    if (!isAlike || typeof first !== 'object' || typeof second !== 'object') return;
    onKept((now) => {
      const scaled = scaleAsked(now.scale);
      return { ...now, reading: scaled.ok ? cardReading(first, second, scaled.scale, now.looks) : null };
    });
  };
  const choose = (beam: Beam, file: File): void => setFiles({ ...files, [beam]: file });
  return (
    <div className="card-by-file">
      <p className="quiet">{words.byFile}</p>
      {(['forward', 'reverse'] as const).map((beam) => (
        <p key={beam} className="facts">
          <PictureChoice
            words={words.beams[beam]}
            label={words.beamLabel[beam]}
            onFile={(file) => choose(beam, file)}
            takesNow
          />
          {files[beam] !== null && <span>{files[beam].name}</span>}
        </p>
      ))}
      {shown !== null && (
        <StillPicture
          file={shown}
          over={(size) => <CardOver size={size} kept={kept} onKept={onKept} live={null} />}
        />
      )}
      <button
        type="button"
        disabled={files.forward === null || files.reverse === null}
        onClick={() => void measure(files)}
      >
        {words.readPictures}
      </button>
      {refused.map((why) => (
        <p key={why} className="refusal" role="alert">
          {why}
        </p>
      ))}
    </div>
  );
}
