import { firstMarks, type PictureSize, type ScaleAsked, type ScaleRead } from '@coreward/bench';
import { type JSX, useId } from 'react';
import { steerTexts } from '../texts/steer.ts';

const words = steerTexts.camera.scale;
const ways: readonly ScaleAsked['by'][] = ['ruler', 'rectangle', 'typed'];

/** How the picture's scale is told: a ruler or a rectangle on the card, marked in the picture, or a figure. */
export function CardScaleForm({
  asked,
  read,
  size,
  onAsk,
}: {
  readonly asked: ScaleAsked;
  readonly read: ScaleRead;
  /** Of the picture on which marks can be set; null: there is none yet. */
  readonly size: PictureSize | null;
  readonly onAsk: (asked: ScaleAsked) => void;
}): JSX.Element {
  const id = useId();
  const { by, length } = asked;
  return (
    <fieldset className="card-scale">
      <legend>{words.title}</legend>
      <div className="choices">
        {ways.map((way) => (
          <label key={way}>
            <input
              type="radio"
              name={`${id}-by`}
              checked={by === way}
              onChange={() =>
                onAsk({ by: way, marks: size === null ? [] : firstMarks(way, size), length: '' })
              }
            />{' '}
            {words.by[way]}
          </label>
        ))}
      </div>
      <div className="steer-field">
        <label htmlFor={id}>{words.length[by]}</label>
        <input
          id={id}
          type="text"
          autoComplete="off"
          placeholder={words.example[by]}
          aria-invalid={length !== '' && !read.ok ? true : undefined}
          aria-describedby={`${id}-said`}
          value={length}
          onChange={({ target }) => onAsk({ ...asked, length: target.value })}
        />
        <p id={`${id}-said`}>{length !== '' && !read.ok ? read.why : ''}</p>
      </div>
      <p className="quiet">{words.hint[by]}</p>
    </fieldset>
  );
}
