import { nobodyAppointed } from '@coreward/bench';
import { type ComponentType, type JSX, lazy, Suspense, useCallback, useEffect, useState } from 'react';
import { useStranger } from '../pairing/use-stranger.ts';
import { frameTexts } from '../texts/frame.ts';
import { type Page, pageAt, pathOf } from './address.ts';
import { Clashes } from './clashes.tsx';
import { ConnectionWords } from './connection-words.tsx';
import { FaultBoundary } from './fault-boundary.tsx';
import { type Go, GoContext, PageLink } from './navigation.tsx';
import { ArrivalContext, PageHeading } from './page-heading.tsx';
import { StepsBar } from './steps-bar.tsx';
import { ThemeChoice, useTheme } from './theme-choice.tsx';

const StartPage = lazy(async () => ({ default: (await import('../start/start-page.tsx')).StartPage }));
const NewLaunchPage = lazy(async () => ({
  default: (await import('../start/new-launch-page.tsx')).NewLaunchPage,
}));
const KeptLaunchPage = lazy(async () => ({
  default: (await import('../start/kept-launch-page.tsx')).KeptLaunchPage,
}));
const VersionsPage = lazy(async () => ({
  default: (await import('../start/versions-page.tsx')).VersionsPage,
}));
const CautionsPage = lazy(async () => ({
  default: (await import('../cautions/cautions-page.tsx')).CautionsPage,
}));
const StepsPage = lazy(async () => ({ default: (await import('../cautions/steps-page.tsx')).StepsPage }));
const SteerPage = lazy(async () => ({ default: (await import('../steer/steer-page.tsx')).SteerPage }));
const WalkPage = lazy(async () => ({ default: (await import('../walk/walk-page.tsx')).WalkPage }));
const DrawerPage = lazy(async () => ({ default: (await import('../drawer/drawer-page.tsx')).DrawerPage }));
const PartVersionsPage = lazy(async () => ({
  default: (await import('../drawer/part-versions-page.tsx')).PartVersionsPage,
}));
const GaugesPage = lazy(async () => ({ default: (await import('../gauge/gauges-page.tsx')).GaugesPage }));
const GaugePage = lazy(async () => ({ default: (await import('../gauge/gauge-page.tsx')).GaugePage }));
const MatchPage = lazy(async () => ({ default: (await import('../match/match-page.tsx')).MatchPage }));
const InstrumentsPage = lazy(async () => ({
  default: (await import('../instrument/instruments-page.tsx')).InstrumentsPage,
}));
const BookPage = lazy(async () => ({ default: (await import('../book/book-page.tsx')).BookPage }));
const PairPage = lazy(async () => ({ default: (await import('../pairing/pair-page.tsx')).PairPage }));

/** The pages that are always at hand, in the order of the work. */
const ways: readonly {
  readonly page: Page;
  readonly word: string;
  readonly also: readonly Page['page'][];
}[] = [
  {
    page: { page: 'start' },
    word: frameTexts.launches,
    also: ['launch', 'versions', 'cautions', 'steps', 'steer', 'walk', 'new'],
  },
  { page: { page: 'drawer' }, word: frameTexts.drawer, also: ['part-versions'] },
  { page: { page: 'gauges' }, word: frameTexts.gauges, also: ['gauge'] },
  { page: { page: 'match' }, word: frameTexts.match, also: [] },
  { page: { page: 'instruments' }, word: frameTexts.instruments, also: [] },
  { page: { page: 'book' }, word: frameTexts.book, also: [] },
  { page: { page: 'pair' }, word: frameTexts.pair, also: [] },
];

/** The frame around every page: the way to the others, how it stands with the station, what can be undone. */
export function App(): JSX.Element {
  const [page, setPage] = useState<Page>(() => pageAt(window.location.pathname));
  const [arrival, setArrival] = useState(0);
  useTheme();
  const arrive = useCallback((next: Page): void => {
    setPage(next);
    setArrival((count) => count + 1);
  }, []);
  const go: Go = useCallback(
    (next, how) => {
      if (how?.replace === true) window.history.replaceState(null, '', pathOf(next));
      else window.history.pushState(null, '', pathOf(next));
      arrive(next);
      window.scrollTo(0, 0);
    },
    [arrive],
  );
  useEffect(() => {
    const onPop = (): void => arrive(pageAt(window.location.pathname));
    window.addEventListener('popstate', onPop);
    return () => window.removeEventListener('popstate', onPop);
  }, [arrive]);
  return (
    <GoContext value={go}>
      <ArrivalContext value={arrival}>
        <a className="skip" href="#page">
          {frameTexts.skip}
        </a>
        <header className="way">
          <span className="product">{frameTexts.product}</span>
          <nav aria-label={frameTexts.pages}>
            <ul>
              {ways.map(({ page: to, word, also }) => (
                <li key={word}>
                  <PageLink
                    to={to}
                    here={to.page === page.page}
                    className={also.includes(page.page) ? 'within' : ''}
                  >
                    {word}
                  </PageLink>
                </li>
              ))}
            </ul>
          </nav>
        </header>
        <ConnectionWords />
        <main id="page" tabIndex={-1}>
          <FaultBoundary key={pathOf(page)}>
            <Clashes />
            <Suspense fallback={<p className="quiet">{frameTexts.opening}</p>}>
              <PageShown page={page} />
            </Suspense>
          </FaultBoundary>
        </main>
        <StepsBar page={page} />
        <footer className="page-foot">
          {/* pages on cautions say it themselves, at their top */}
          {page.page !== 'cautions' &&
            page.page !== 'steps' &&
            page.page !== 'gauge' &&
            page.page !== 'steer' && (
              <p>
                {/* a launch's own cautions say who decides */}
                {page.page !== 'launch' && `${frameTexts.hazards} `}
                {nobodyAppointed}
              </p>
            )}
          <ThemeChoice />
        </footer>
      </ArrivalContext>
    </GoContext>
  );
}

function PageShown({ page }: { readonly page: Page }): JSX.Element {
  // whatever address it asked for, a stranger is told first how to be let in
  if (useStranger()) return <PairPage />;
  switch (page.page) {
    case 'launch':
      return <KeptLaunchPage key={page.id} id={page.id} />;
    case 'versions':
      return <VersionsPage key={page.id} id={page.id} />;
    case 'part-versions':
      return <PartVersionsPage key={page.id} id={page.id} />;
    case 'cautions':
      return <CautionsPage key={page.id} id={page.id} />;
    case 'steps':
      return <StepsPage key={page.id} id={page.id} />;
    case 'walk':
      return <WalkPage key={page.id} id={page.id} />;
    case 'steer':
      return <SteerPage key={page.id} id={page.id} />;
    case 'gauge':
      return <GaugePage key={pathOf(page)} name={page.gauge} about={page.about} />;
    case 'unknown':
      return <UnknownPage path={page.path} />;
    default: {
      const Shown = plainPages[page.page];
      return <Shown key={page.page} />;
    }
  }
}

const plainPages: Readonly<
  Record<'start' | 'new' | 'drawer' | 'gauges' | 'match' | 'instruments' | 'book' | 'pair', ComponentType>
> = {
  start: StartPage,
  new: NewLaunchPage,
  drawer: DrawerPage,
  gauges: GaugesPage,
  match: MatchPage,
  instruments: InstrumentsPage,
  book: BookPage,
  pair: PairPage,
};

function UnknownPage({ path }: { readonly path: string }): JSX.Element {
  const words = frameTexts.unknown;
  return (
    <>
      <PageHeading title={words.title} />
      <p>{words.text(path)}</p>
      <p>
        <PageLink to={{ page: 'start' }}>{words.way}</PageLink>
      </p>
    </>
  );
}
