import { type FieldNode, type LengthToTurn, type LinePart, lengthsToTurn, type Moved } from '@coreward/bench';
import { type JSX, useState } from 'react';
import { launchTexts } from '../texts/launch.ts';
import { Wheel } from './wheel.tsx';

interface TurningProps {
  readonly part: LinePart;
  readonly fields: FieldNode;
  readonly onHold: (length: LengthToTurn, moved: Moved | null) => void;
  readonly onDone: (length: LengthToTurn, text: string) => void;
}

/** The lengths of a part that a hand may turn, each with its wheel. */
export function Turning({ part, fields, onHold, onDone }: TurningProps): JSX.Element | null {
  const [held, setHeld] = useState<{ readonly key: string; readonly text: string } | null>(null);
  const lengths = lengthsToTurn(fields, part);
  if (lengths.length === 0) return null;
  return (
    <ul className="turning" aria-label={launchTexts.turning}>
      {lengths.map((length) => (
        <li key={length.key}>
          <span className="turning-name">{length.name}</span>
          <output>{held?.key === length.key ? held.text : length.text}</output>
          <Wheel
            label={length.name}
            text={length.text}
            dimension="length"
            onHold={(moved) => {
              setHeld(moved === null ? null : { key: length.key, text: moved.text });
              onHold(length, moved);
            }}
            onDone={(text) => {
              setHeld(null);
              onDone(length, text);
            }}
          />
        </li>
      ))}
    </ul>
  );
}
