import { type CameraLevel, cameraLinearityOf, readingWords } from '@coreward/bench';
import { type FormEvent, type JSX, useId, useState } from 'react';
import { PageLink } from '../frame/navigation.tsx';
import { cameraTexts } from '../texts/camera.ts';

const words = cameraTexts.levels;

/** Whether the readings keep to the light, tried with levels that are known. */
export function CameraLevels({ value }: { readonly value: number | null }): JSX.Element {
  const id = useId();
  const [levels, setLevels] = useState<readonly CameraLevel[]>([]);
  const [written, setWritten] = useState('');
  const told = levels.length < 2 ? null : cameraLinearityOf(levels);
  const read = (event: FormEvent): void => {
    event.preventDefault();
    if (value === null || written.trim() === '') return;
    setLevels([...levels, { level: written.trim(), value }]);
    setWritten('');
  };
  return (
    <details className="more camera-levels">
      <summary>{words.title}</summary>
      <p>{words.text}</p>
      <form className="choices" onSubmit={read}>
        <label htmlFor={id}>{words.level}</label>
        <input
          id={id}
          type="text"
          autoComplete="off"
          placeholder={cameraTexts.levelExample}
          value={written}
          onChange={({ target }) => setWritten(target.value)}
        />
        <button type="submit" disabled={value === null || written.trim() === ''}>
          {words.read}
        </button>
        {levels.length > 0 && (
          <button type="button" className="quiet-button" onClick={() => setLevels([])}>
            {words.forget}
          </button>
        )}
      </form>
      <ul>
        {levels.map((one, rank) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: levels have no name but their rank
          <li key={rank}>{words.row(one.level, readingWords(one.value, 'relative'))}</li>
        ))}
      </ul>
      <div role="status">
        {told?.kind === 'measured' && (
          <>
            {told.answers.map(({ name, value: answer, interval, advice }) => (
              <p key={name}>
                {name}: <strong>{answer ?? advice}</strong> {interval}
              </p>
            ))}
            {told.remarks.map((remark) => (
              <p key={remark}>{remark}</p>
            ))}
          </>
        )}
        {told?.kind === 'refused' &&
          told.refused.map(({ what, mend }) => (
            <p key={what} className="refusal">
              {what}. {mend}
            </p>
          ))}
      </div>
      <p>
        <PageLink to={{ page: 'gauge', gauge: 'camera-linearity', about: null }}>{words.gauge}</PageLink>
      </p>
    </details>
  );
}
