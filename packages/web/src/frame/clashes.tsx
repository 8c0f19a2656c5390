import { type JSX, lazy, Suspense } from 'react';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { keeperTexts } from '../texts/keeping.ts';

// seldom there, so that no page waits for it; the station that told of a clash is there to send it
const ClashShown = lazy(async () => ({ default: (await import('./clash-shown.tsx')).ClashShown }));

/** What was changed on two pages at once, and what the station will not take: shown until someone has chosen. */
export function Clashes(): JSX.Element | null {
  const { clashes, unwanted } = useKept();
  const keeping = useKeeping();
  if (clashes.length === 0 && unwanted.length === 0) return null;
  return (
    <div role="alert" className="clashes">
      <Suspense fallback={null}>
        {clashes.map((clash) => (
          <ClashShown key={`${clash.what} ${JSON.stringify(clash.thing)}`} clash={clash} />
        ))}
      </Suspense>
      {unwanted.map((one) => (
        <section key={`${one.what} ${JSON.stringify(one.thing)}`}>
          <h2>{keeperTexts.unwanted.title}</h2>
          <p>{one.what}</p>
          {one.refused.map(({ what, mend }) => (
            <p key={what}>{`${what}. ${mend}`}</p>
          ))}
          <button type="button" onClick={() => keeping.setAside(one)}>
            {keeperTexts.unwanted.setAside}
          </button>
        </section>
      ))}
    </div>
  );
}
