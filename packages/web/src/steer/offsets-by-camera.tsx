import {
  offsetsByCamera,
  type PictureSize,
  type ScrewSenses,
  type SteerAnswer,
  type SteerCard,
  type SteerPlan,
} from '@coreward/bench';
import { type JSX, useRef, useState } from 'react';
import { CameraView } from '../camera/camera-view.tsx';
import { useCamera } from '../camera/use-camera.ts';
import { cameraTexts } from '../texts/camera.ts';
import { steerTexts } from '../texts/steer.ts';
import { CardByCamera, type CardKept, CardOver, nothingKept } from './card-by-camera.tsx';
import { useCardReader } from './use-card-reader.ts';

/** What is kept of both cards. */
export type CardsKept = Readonly<Record<SteerCard, CardKept>>;
export const noCardsKept: CardsKept = { near: nothingKept, far: nothingKept };

/** The same cards before they are read again: scales stay, spots do not. */
export const unread = ({ near, far }: CardsKept): CardsKept => ({
  near: { ...near, still: null, reading: null },
  far: { ...far, still: null, reading: null },
});

const names = { near: steerTexts.nearCard, far: steerTexts.farCard } as const;
const words = steerTexts.camera;

/** Both cards read by one camera, one after the other. */
export function OffsetsByCamera({
  plan,
  senses,
  kept,
  onKept,
  answer,
}: {
  readonly plan: SteerPlan;
  readonly senses: ScrewSenses;
  readonly kept: CardsKept;
  /** What a picture brings later lands on what is kept by then. */
  readonly onKept: (change: (kept: CardsKept) => CardsKept) => void;
  readonly answer: (answer: SteerAnswer) => void;
}): JSX.Element {
  const camera = useCamera('live');
  const video = useRef<HTMLVideoElement>(null);
  const isOpen = camera.state.kind === 'open';
  const reader = useCardReader(video, isOpen);
  const [card, setCard] = useState<SteerCard>('near');
  const [size, setSize] = useState<PictureSize | null>(null);
  const keep = (of: SteerCard, change: (one: CardKept) => CardKept): void =>
    onKept((now) => ({ ...now, [of]: change(now[of]) }));
  const { near, far } = kept;
  return (
    <div className="offsets-by-camera">
      <p className="quiet">{words.about}</p>
      <fieldset className="choices steer-choice">
        <legend>{words.which}</legend>
        {(['near', 'far'] as const).map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={card === one}
            onClick={() => {
              reader.stop();
              setCard(one);
            }}
          >
            {names[one]}
            {kept[one].reading !== null && ` ${words.isRead}`}
          </button>
        ))}
      </fieldset>
      <CameraView
        camera={camera}
        video={video}
        onFile={null}
        onSize={setSize}
        over={(now) => (
          <CardOver
            key={card}
            size={now}
            kept={kept[card]}
            onKept={(change) => keep(card, change)}
            live={reader.live?.kind === 'spot' ? reader.live.spot : null}
          />
        )}
      />
      {reader.fault !== null && (
        <p className="refusal" role="alert">
          {cameraTexts.fault} <code>{reader.fault}</code>
        </p>
      )}
      <CardByCamera
        key={card}
        {...{ card, plan, senses, reader }}
        size={isOpen ? size : null}
        kept={kept[card]}
        onKept={(change) => keep(card, change)}
      />
      <p>
        <button
          type="button"
          className="act"
          disabled={near.reading === null || far.reading === null}
          onClick={() => {
            if (near.reading !== null && far.reading !== null)
              answer(offsetsByCamera(near.reading, far.reading));
          }}
        >
          {words.enter}
        </button>
      </p>
    </div>
  );
}
