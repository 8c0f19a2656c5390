import type { JSX } from 'react';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { useStranger } from '../pairing/use-stranger.ts';
import { frameTexts } from '../texts/frame.ts';
import { keeperTexts } from '../texts/keeping.ts';
import { PageLink } from './navigation.tsx';

/** How the page stands with the station, in words, where that needs any; and what another page has just done. */
export function ConnectionWords(): JSX.Element {
  const { connection, remembered, cannotKeep, news } = useKept();
  const keeping = useKeeping();
  const isStranger = useStranger();
  const troubled =
    connection === 'lost' || connection === 'outdated' || connection === 'unpaired' || cannotKeep !== null;
  return (
    <div className="connection" role="status" data-connection={connection}>
      {connection === 'lost' && <p>{remembered ? keeperTexts.lost : keeperTexts.lostUnremembered}</p>}
      {connection === 'unpaired' && !isStranger && (
        <p>
          {keeperTexts.unpaired} <PageLink to={{ page: 'pair' }}>{frameTexts.pairThis}</PageLink>
        </p>
      )}
      {connection === 'outdated' && (
        <p>
          {keeperTexts.outdated}{' '}
          <button type="button" onClick={() => window.location.reload()}>
            {keeperTexts.reload}
          </button>
        </p>
      )}
      {cannotKeep !== null && connection === 'joined' && (
        <p>
          {keeperTexts.cannotKeep} {cannotKeep.map(({ what, mend }) => `${what}. ${mend}`).join(' ')}
        </p>
      )}
      {!troubled && news !== null && (
        <p className="news">
          {news}{' '}
          <button type="button" className="quiet-button" onClick={keeping.readNews}>
            {frameTexts.seen}
          </button>
        </p>
      )}
    </div>
  );
}
