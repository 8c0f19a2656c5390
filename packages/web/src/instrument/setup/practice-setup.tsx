import { type JSX, useEffect, useState } from 'react';
import { launchesOf, useKeeping, useKept } from '../../keeping/use-keeping.ts';
import { instrumentTexts } from '../../texts/instrument.ts';
import type { SetupProps } from '../kind-parts.ts';
import { Choice } from './choice.tsx';

const words = instrumentTexts.practice;

/** Which launch's bench is simulated. */
export function PracticeSetup({ onSetup }: SetupProps): JSX.Element {
  const { world } = useKeeping();
  const launches = launchesOf(useKept()).filter(({ putAway }) => !putAway);
  const [chosen, setChosen] = useState<string | null>(null);
  // eight hexadecimal digits of a random name are a random number of 32 bits
  const [seed] = useState(() => Number.parseInt(world.newId().slice(0, 8), 16));
  const newest = launches[0]?.id ?? null;
  // the one offered at first stays, whichever is changed elsewhere meanwhile
  if (chosen === null && newest !== null) setChosen(newest);
  const launch = chosen ?? newest;
  useEffect(
    () => onSetup(launch === null ? null : { kind: 'practice', launch, seed }),
    [onSetup, launch, seed],
  );
  if (launch === null) return <p>{words.none}</p>;
  return (
    <Choice
      label={words.launch}
      value={launch}
      values={launches.map(({ id }) => id)}
      words={(one) => launches.find(({ id }) => id === one)?.name ?? one}
      onChange={setChosen}
    />
  );
}
