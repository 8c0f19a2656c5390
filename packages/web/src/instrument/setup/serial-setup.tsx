import type { LineFormat } from '@coreward/bench';
import { routes, type SerialLink } from '@coreward/contract';
import { type JSX, useCallback, useEffect, useState } from 'react';
import { ask } from '../../keeping/client.ts';
import { useKeeping } from '../../keeping/use-keeping.ts';
import { useNewest } from '../../keeping/use-newest.ts';
import { instrumentTexts } from '../../texts/instrument.ts';
import { done } from '../done.ts';
import type { SetupProps } from '../kind-parts.ts';
import { LineForm } from './line-form.tsx';
import { SerialLinkFields } from './serial-link.tsx';

const words = instrumentTexts.serial;
/** What most hobby boards print: one bare number a line. */
const bareNumber: LineFormat = { separator: 'none', decimal: 'point', column: 0, unit: 'counts' };

/** A device that prints a line for each reading: its port, a moment of listening, and how its lines are read. */
export function SerialSetup({ initial, onSetup }: SetupProps): JSX.Element {
  const { world } = useKeeping();
  const before = initial?.kind === 'serial-line' ? initial : null;
  const [link, setLink] = useState<SerialLink | null>(before?.link ?? null);
  const [format, setFormat] = useState<LineFormat | null>(before?.format ?? null);
  const [lines, setLines] = useState<readonly string[]>([]);
  const [said, setSaid] = useState<string | null>(null);
  const [listening, setListening] = useState(false);
  useEffect(
    () => onSetup(link === null || format === null ? null : { kind: 'serial-line', link, format }),
    [onSetup, link, format],
  );
  const newest = useNewest();
  // what was heard at another port is not heard at this one
  const change = useCallback(
    (next: SerialLink | null): void => {
      newest.forget();
      setLink(next);
      setListening(false);
      setLines([]);
      setSaid(null);
    },
    [newest],
  );
  const listen = async (): Promise<void> => {
    if (link === null) return;
    setListening(true);
    setSaid(null);
    const tried = await newest.of(done(ask(world, routes.tryDevice, {}, { speaks: 'lines', link })));
    setListening(false);
    if (!tried.ok || tried.answer.speaks !== 'lines') {
      setSaid(tried.ok ? null : tried.said);
      return;
    }
    const { lines: heard, format: found } = tried.answer;
    setLines(heard);
    // what somebody has chosen stays, unless there is something better than nothing
    setFormat((now) => found ?? now ?? (heard.length === 0 ? null : bareNumber));
    setSaid(heard.length === 0 ? words.silent : found === null ? words.noForm : words.heard(heard.length));
  };
  return (
    <>
      <SerialLinkFields initial={link} onLink={change} />
      <p className="setup-act">
        <button type="button" disabled={link === null || listening} onClick={() => void listen()}>
          {listening ? words.listening : words.listen}
        </button>{' '}
        <span role="status">{said}</span>
      </p>
      {format !== null && <LineForm lines={lines} format={format} onFormat={setFormat} />}
    </>
  );
}
