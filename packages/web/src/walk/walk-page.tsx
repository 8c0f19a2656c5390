import { type JSX, useState } from 'react';
import { type Cautioned, CautionedLaunch } from '../cautions/cautioned-launch.tsx';
import { useInstruments } from '../instrument/use-instruments.ts';
import { walkTexts } from '../texts/walk.ts';
import { BeginWalk } from './begin-walk.tsx';
import { RunningWalk } from './running-walk.tsx';
import { useWalk } from './use-walk.ts';
import './walk.css';

/** The fine alignment, step by step: for a phone beside the mount, and a laptop in step with it. */
export function WalkPage({ id }: { readonly id: string }): JSX.Element {
  return (
    <CautionedLaunch id={id} title={walkTexts.title}>
      {(cautioned) => <Walk id={id} cautioned={cautioned} />}
    </CautionedLaunch>
  );
}

function Walk({ id, cautioned }: { readonly id: string; readonly cautioned: Cautioned }): JSX.Element {
  const held = useWalk(id);
  const instruments = useInstruments();
  const [another, setAnother] = useState<string | null>(null);
  if (held.stands === null) return <p className="quiet">{walkTexts.waiting}</p>;
  if (held.stands === 'failed') return <p role="alert">{walkTexts.failed}</p>;
  const { walk } = held.stands;
  if (walk === null || another === walk.id)
    return (
      <BeginWalk cautioned={cautioned} held={held} instruments={instruments} isAnother={walk !== null} />
    );
  return (
    <RunningWalk walk={walk} held={held} instruments={instruments} onAnother={() => setAnother(walk.id)} />
  );
}
