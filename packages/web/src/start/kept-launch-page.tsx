import { setInText } from '@coreward/bench';
import { type JSX, lazy, Suspense, useMemo, useState } from 'react';
import { EntryInput } from '../field/entry-input.tsx';
import { pathOf } from '../frame/address.ts';
import { PageLink, useGo } from '../frame/navigation.tsx';
import { PageHeading } from '../frame/page-heading.tsx';
import { type ShownLaunch, useKeeping, useKept, useLaunch } from '../keeping/use-keeping.ts';
import { frameTexts } from '../texts/frame.ts';
import { startTexts } from '../texts/start.ts';
import { launchName } from './launch-name.ts';
import './start.css';

// begun at once, while the station is asked for the launch
const launchPage = import('../launch/launch-page.tsx');
const LaunchPage = lazy(async () => ({ default: (await launchPage).LaunchPage }));

/** A launch of the bench book: its name and what can be done with it as a whole, around its light. */
export function KeptLaunchPage({ id }: { readonly id: string }): JSX.Element {
  const launch = useLaunch(id);
  const words = startTexts.launch;
  if (launch === 'waiting') return <p className="quiet">{startTexts.waiting}</p>;
  if (launch === null) {
    return (
      <>
        <PageHeading title={words.unknown} />
        <p>{words.unknownText}</p>
        <p>
          <PageLink to={{ page: 'start' }}>{frameTexts.unknown.way}</PageLink>
        </p>
      </>
    );
  }
  return <Shown launch={launch} />;
}

function Shown({ launch }: { readonly launch: ShownLaunch }): JSX.Element {
  const { id, text, putAway, invented } = launch;
  const keeping = useKeeping();
  const go = useGo();
  const { parts } = useKept();
  const here = pathOf({ page: 'launch', id });
  const words = startTexts.launch;
  const name = useMemo(() => launchName(text), [text]);
  const atHand = useMemo(() => [...parts.values()].filter((part) => !part.putAway), [parts]);
  const change = (next: string, what: string): void =>
    keeping.change({ kind: 'launch', id }, { text: next, putAway, invented }, what, here);
  const put = (away: boolean): void => {
    const what = away ? startTexts.whatPutAway(name) : startTexts.whatBroughtBack(name);
    keeping.change({ kind: 'launch', id }, { text, putAway: away, invented }, what, here);
  };
  const copy = (): void => {
    const copied = setInText(text, ['name'], words.copied(name));
    const what = words.whatCopied(name);
    go({
      page: 'launch',
      id: keeping.newLaunch({ text: copied, putAway: false, invented: false }, what, '/'),
    });
  };
  return (
    <>
      <Name
        name={name}
        rename={(next) => change(setInText(text, ['name'], next), words.whatRenamed(name, next))}
      />
      <p className="facts">
        {invented && <span className="mark">{words.invented}</span>}
        {putAway && <span className="mark">{words.isPutAway}</span>}
        <PageLink to={{ page: 'cautions', id }}>{words.cautions}</PageLink>
        <PageLink to={{ page: 'steps', id }}>{words.steps}</PageLink>
        <PageLink to={{ page: 'steer', id }}>{words.steer}</PageLink>
        <PageLink to={{ page: 'walk', id }}>{invented ? words.practise : words.walk}</PageLink>
        <PageLink to={{ page: 'versions', id }}>{words.versions}</PageLink>
        <button type="button" className="quiet-button" onClick={copy}>
          {words.copy}
        </button>
        <button type="button" className="quiet-button" onClick={() => put(!putAway)}>
          {putAway ? startTexts.bringBack : startTexts.putAway}
        </button>
      </p>
      <Suspense fallback={<p className="quiet">{frameTexts.opening}</p>}>
        <LaunchPage id={id} text={text} onChange={change} invented={invented} parts={atHand} />
      </Suspense>
    </>
  );
}

function Name({
  name,
  rename,
}: {
  readonly name: string;
  readonly rename: (name: string) => void;
}): JSX.Element {
  const [open, setOpen] = useState(false);
  const words = startTexts.launch;
  return (
    <div className="launch-heading">
      <PageHeading title={name} />
      {open ? (
        <EntryInput
          label={words.renameLabel}
          className="entry entry-name"
          written={name}
          onEnter={(next) => {
            setOpen(false);
            if (next !== '') rename(next);
          }}
        />
      ) : (
        <button type="button" className="quiet-button" onClick={() => setOpen(true)}>
          {words.rename}
        </button>
      )}
    </div>
  );
}
