import {
  type Gauge,
  isExample,
  type KeptPart,
  leadsElsewhere,
  type Measured,
  type PartKind,
  partsToBegin,
  readPart,
} from '@coreward/bench';
import { type JSX, useEffect, useMemo, useState } from 'react';
import { type GaugeAbout, pathOf } from '../frame/address.ts';
import { PageLink } from '../frame/navigation.tsx';
import { contentOf } from '../keeping/state.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { drawerTexts } from '../texts/drawer.ts';
import { gaugeTexts } from '../texts/gauge.ts';
import { BeginPart } from './begin-part.tsx';
import { Filling } from './filling.tsx';
import { keepGauge } from './keep-gauge.ts';
import { type Target, targetsFor, withAnswer } from './targets.ts';
import type { GaugeBench } from './use-bench.ts';

interface IntoDrawerProps {
  readonly gauge: Gauge;
  readonly about: GaugeAbout | null;
  readonly bench: GaugeBench;
  readonly measured: Extract<Measured, { kind: 'measured' }>;
  /** Whether that is what the readings on the page say; otherwise they are being measured, and nothing is kept. */
  readonly isFresh: boolean;
}

/** The way of an answer into a part of the drawer or into a launch, and of its readings into the bench book. */
export function IntoDrawer({ gauge, about, bench, measured, isFresh }: IntoDrawerProps): JSX.Element {
  const keeping = useKeeping();
  const state = useKept();
  const [chosen, setChosen] = useState<string | null>(null);
  const [beside, setBeside] = useState<string | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const [keepsIt, setKeepsIt] = useState(false);
  const busy = keepsIt || !isFresh;
  const asked = about?.kind === 'launch' ? about.id : null;
  useEffect(() => {
    if (asked !== null) keeping.needLaunch(asked).catch(() => {});
  }, [keeping, asked]);
  const targets = useMemo(() => targetsFor(state, measured.entries), [state, measured.entries]);
  const begins = useMemo(() => partsToBegin(gauge.name, measured.entries), [gauge, measured.entries]);
  const begin = begins.find(({ kind }) => newKey(kind) === chosen) ?? null;
  const target =
    begin !== null ? null : (targets.find(({ key }) => key === chosen) ?? likely(targets, about));
  const elsewhere = leadsElsewhere(gauge.name);
  const launch = target?.thing.kind === 'launch' ? target.thing.id : asked;
  const answers = measured.answers.flatMap(({ name, value }) => (value === null ? [] : [`${name} ${value}`]));

  const keep = async (went: string | null): Promise<boolean> => {
    setKeepsIt(true);
    setSaid(null);
    try {
      const text = gaugeTexts.entryText(gauge.title, answers.join(', '), went);
      const { sheet, picture, reverse } = bench;
      await keepGauge(keeping.world, { gauge: gauge.name, text, sheet, picture, reverse, went, launch });
      return true;
    } catch {
      setSaid(gaugeTexts.notKept);
      return false;
    } finally {
      setKeepsIt(false);
    }
  };
  const write = async (to: Target): Promise<void> => {
    const went = gaugeTexts.went(to.told, to.name);
    if (!(await keep(went))) return;
    // whoever changed it while the readings were on their way has it changed all the same
    const now = contentOf(keeping.get(), to.thing);
    const held = now?.kind === 'document' ? now.body : to;
    const { text } = withAnswer({ ...to, text: held.text }, beside, keeping.get());
    keeping.change(
      to.thing,
      { text, putAway: held.putAway, invented: held.invented },
      gaugeTexts.what(to.name, to.told, to.place.before, to.entry.text),
      pathOf({ page: 'gauge', gauge: gauge.name, about }),
    );
    setSaid(gaugeTexts.written(went));
  };
  const beginPart = async ({ kind, text }: KeptPart): Promise<void> => {
    const { name } = readPart({ kind, text });
    const went = gaugeTexts.wentNew(drawerTexts.kinds[kind].one, name);
    if (!(await keep(went))) return;
    const here = pathOf({ page: 'gauge', gauge: gauge.name, about });
    keeping.newPart(kind, { text, putAway: false, invented: false }, drawerTexts.whatNew(name), here);
    setChosen('');
    setSaid(gaugeTexts.written(went));
  };
  return (
    <section className="into-drawer no-print">
      <h2>{gaugeTexts.into}</h2>
      <p className="quiet">{gaugeTexts.intoAbout}</p>
      {isExample(gauge, bench.sheet) && <p className="advice">{gaugeTexts.isExample}</p>}
      {measured.entries.length === 0 && elsewhere === null && (
        <p>{answers.length === 0 ? gaugeTexts.nothingSaid : gaugeTexts.noPlaces}</p>
      )}
      {measured.entries.length > 0 && targets.length === 0 && <p>{gaugeTexts.noTarget}</p>}
      {elsewhere !== null && (
        <p>
          {elsewhere.words}{' '}
          {elsewhere.page !== null && launch !== null && (
            <PageLink to={{ page: elsewhere.page, id: launch }}>{gaugeTexts.toSteer}</PageLink>
          )}
        </p>
      )}
      {targets.length + begins.length > 0 && (
        <label className="target">
          {gaugeTexts.where}
          <select
            value={target?.key ?? ''}
            onChange={({ target: { value } }) => {
              setChosen(value);
              setBeside(null);
              setSaid(null);
            }}
          >
            <option value="">{gaugeTexts.choose}</option>
            {targets.map(({ key, words }) => (
              <option key={key} value={key}>
                {words}
              </option>
            ))}
            {begins.map(({ kind }) => (
              <option key={kind} value={newKey(kind)}>
                {gaugeTexts.newPart(drawerTexts.kinds[kind].one)}
              </option>
            ))}
          </select>
        </label>
      )}
      {target !== null && (
        <Filling
          target={target}
          beside={beside}
          onBeside={setBeside}
          busy={busy}
          onWrite={() => void write(target)}
        />
      )}
      {begin !== null && (
        <BeginPart
          key={begin.kind}
          gauge={gauge.name}
          begin={begin}
          busy={busy}
          onBegin={(part) => void beginPart(part)}
        />
      )}
      <p>
        <button
          type="button"
          disabled={busy}
          onClick={() => {
            void keep(null).then((done) => {
              if (done) setSaid(gaugeTexts.kept);
            });
          }}
        >
          {gaugeTexts.keepOnly}
        </button>
      </p>
      <p role="status">
        {keepsIt ? gaugeTexts.keepingIt : said}{' '}
        {said !== null && launch !== null && (
          <PageLink to={{ page: 'launch', id: launch }}>{gaugeTexts.seeLaunch}</PageLink>
        )}
      </p>
    </section>
  );
}

const newKey = (kind: PartKind): string => `new ${kind}`;

/** What the page was opened for: the key behind `#` in that launch, or the part; nothing else is guessed. */
function likely(targets: readonly Target[], about: GaugeAbout | null): Target | null {
  if (about === null || about.kind === 'reading') return null;
  const own = targets.filter(({ key }) => key.startsWith(`${about.kind} ${about.id} `));
  const fills = decodeURIComponent(window.location.hash.slice(1));
  return own.find(({ place }) => place.place === fills) ?? own[0] ?? null;
}
