import { capital, type Gauge, gaugeNamed, howToFor, nobodyAppointed, standingLine } from '@coreward/bench';
import { type JSX, useMemo } from 'react';
import type { GaugeAbout } from '../frame/address.ts';
import { PageLink } from '../frame/navigation.tsx';
import { PageHeading } from '../frame/page-heading.tsx';
import { useKept } from '../keeping/use-keeping.ts';
import { launchName } from '../start/launch-name.ts';
import { gaugeTexts } from '../texts/gauge.ts';
import { AnswersView, RefusedView } from './answers-view.tsx';
import { GaugeDrawing } from './drawings/gauge-drawing.tsx';
import { IntoDrawer } from './into-drawer.tsx';
import { ReadingsForm } from './readings-form.tsx';
import { isBegun, useBench } from './use-bench.ts';
import { useGauge } from './use-gauge.ts';
import './gauge.css';

/** One gauge: how it goes, what was read, what that says, and where it goes from here. */
export function GaugePage({
  name,
  about,
}: {
  readonly name: string;
  readonly about: GaugeAbout | null;
}): JSX.Element {
  const gauge = gaugeNamed(name);
  if (gauge !== null) return <Shown gauge={gauge} about={about} />;
  return (
    <>
      <PageHeading title={gaugeTexts.unknown} />
      <p>{gaugeTexts.unknownText(name)}</p>
      <p>
        <PageLink to={{ page: 'gauges' }}>{gaugeTexts.all}</PageLink>
      </p>
    </>
  );
}

function Shown({ gauge, about }: { readonly gauge: Gauge; readonly about: GaugeAbout | null }): JSX.Element {
  return (
    <div className="gauge">
      <PageHeading title={capital(gauge.title)} />
      <p className="facts no-print">
        <WayBack about={about} />
        <PageLink to={{ page: 'gauges' }}>{gaugeTexts.all}</PageLink>
      </p>
      <p>{gaugeTexts.answers(gauge.answers)}</p>
      <div className="gauge-sides">
        <HowItGoes gauge={gauge} />
        <Work gauge={gauge} about={about} />
      </div>
    </div>
  );
}

const notYet = {
  table: gaugeTexts.notYet,
  picture: gaugeTexts.notYetPicture,
  'two pictures': gaugeTexts.notYetPictures,
} satisfies Record<Gauge['takes'], string>;

/** The readings, and what they say. */
function Work({ gauge, about }: { readonly gauge: Gauge; readonly about: GaugeAbout | null }): JSX.Element {
  const bench = useBench(gauge, about);
  const begun = isBegun(gauge, bench);
  const { measured, isFresh, fault } = useGauge(
    gauge.name,
    begun ? bench.sheet : null,
    bench.picture,
    bench.reverse,
  );
  return (
    <div className="gauge-work">
      <ReadingsForm
        gauge={gauge}
        bench={bench}
        refused={measured?.kind === 'refused' ? measured.refused : []}
      />
      <div className="gauge-result">
        <div className="gauge-said" role="status">
          {!begun && <p className="quiet">{notYet[gauge.takes]}</p>}
          {begun && measured === null && fault === null && <p className="quiet">{gaugeTexts.working}</p>}
          {fault !== null && (
            <p className="refusal">
              {gaugeTexts.fault} <code>{fault}</code>
            </p>
          )}
          {begun && measured?.kind === 'refused' && <RefusedView measured={measured} />}
        </div>
        {begun && measured?.kind === 'measured' && (
          <>
            <AnswersView measured={measured} />
            <IntoDrawer gauge={gauge} about={about} bench={bench} measured={measured} isFresh={isFresh} />
          </>
        )}
      </div>
    </div>
  );
}

function WayBack({ about }: { readonly about: GaugeAbout | null }): JSX.Element | null {
  const { launches } = useKept();
  if (about === null) return null;
  switch (about.kind) {
    case 'launch': {
      const held = launches.get(about.id);
      const name = held === undefined ? '…' : held.text === null ? held.name : launchName(held.text);
      return <PageLink to={{ page: 'launch', id: about.id }}>{gaugeTexts.toLaunch(name)}</PageLink>;
    }
    case 'part':
      return <PageLink to={{ page: 'drawer' }}>{gaugeTexts.toDrawer}</PageLink>;
    case 'reading':
      return <PageLink to={{ page: 'book' }}>{gaugeTexts.toBook}</PageLink>;
  }
}

function HowItGoes({ gauge }: { readonly gauge: Gauge }): JSX.Element | null {
  const howTo = useMemo(() => howToFor(gauge.name), [gauge]);
  if (howTo === null) return null;
  return (
    <section className="how-to">
      <h2>{gaugeTexts.howTo}</h2>
      <GaugeDrawing gauge={gauge.name} />
      <p className="quiet">{gaugeTexts.needs(gauge.needs)}</p>
      <ol>
        {howTo.steps.map((step) => (
          <li key={step}>{step.replaceAll('`', '')}</li>
        ))}
      </ol>
      <h3>{gaugeTexts.cautions}</h3>
      <ul className="gauge-cautions">
        {howTo.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <p className="quiet">
        {standingLine} {nobodyAppointed}
      </p>
    </section>
  );
}
