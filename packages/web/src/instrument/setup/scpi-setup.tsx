import { fromMeter, type MeterUnit, meterUnits, readingUnitOf, readingWords } from '@coreward/bench';
import { type DeviceLink, instrumentSetup, routes, tcpLink } from '@coreward/contract';
import { type JSX, useCallback, useEffect, useMemo, useState } from 'react';
import { ask } from '../../keeping/client.ts';
import { useKeeping } from '../../keeping/use-keeping.ts';
import { useNewest } from '../../keeping/use-newest.ts';
import { instrumentTexts } from '../../texts/instrument.ts';
import { done } from '../done.ts';
import type { SetupProps } from '../kind-parts.ts';
import { Choice, Line } from './choice.tsx';
import { SerialLinkFields } from './serial-link.tsx';

const words = instrumentTexts.scpi;
/** Where instruments listen for raw SCPI; IANA's registered port for it, from memory. */
const usualPort = '5025';
const paces = Object.keys(words.paces).map(Number);

interface Told {
  readonly said: readonly string[];
  readonly value: number | null;
}

const nothing: Told = { said: [], value: null };

/** A device that is asked: where it is, who it is, and the query that brings a number. */
export function ScpiSetup({ initial, onSetup }: SetupProps): JSX.Element {
  const { world } = useKeeping();
  const before = initial?.kind === 'scpi' ? initial : null;
  const [by, setBy] = useState<DeviceLink['by']>(before?.link.by ?? 'tcp');
  const [link, setLink] = useState<DeviceLink | null>(before?.link ?? null);
  const [query, setQuery] = useState(before?.query ?? 'READ?');
  const [unit, setUnit] = useState<MeterUnit>(before?.unit ?? 'W');
  const [every, setEvery] = useState(before?.every ?? 100);
  const [told, setTold] = useState<Told>(nothing);
  const [asking, setAsking] = useState(false);
  const newest = useNewest();
  // what another device said, or is about to say, is not said of this one
  const change = useCallback(
    (next: DeviceLink | null): void => {
      newest.forget();
      setLink(next);
      setAsking(false);
      setTold(nothing);
    },
    [newest],
  );
  useEffect(() => {
    const made = instrumentSetup.safeParse({ kind: 'scpi', link, query: query.trim(), unit, every });
    onSetup(made.success ? made.data : null);
  }, [onSetup, link, query, unit, every]);
  const askIt = async (): Promise<void> => {
    if (link === null) return;
    setAsking(true);
    setTold(nothing);
    const tried = await newest.of(done(ask(world, routes.tryDevice, {}, { speaks: 'scpi', link })));
    setAsking(false);
    if (!tried.ok) {
      setTold({ said: [tried.said], value: null });
      return;
    }
    if (tried.answer.speaks !== 'scpi') return;
    const { identity, query: found, value } = tried.answer;
    if (found !== null) setQuery((now) => (now === query ? found : now));
    const who = identity === null ? words.isNobody : words.is(identity);
    setTold({ said: found === null ? [who, words.noQuery] : [who], value });
  };
  return (
    <>
      <Choice
        label={words.by}
        value={by}
        values={['tcp', 'serial'] as const}
        words={(one) => words[one]}
        onChange={(next) => {
          setBy(next);
          change(null);
        }}
      />
      {by === 'tcp' ? (
        <TcpFields initial={link?.by === 'tcp' ? link : null} onLink={change} />
      ) : (
        <SerialLinkFields initial={link?.by === 'serial' ? link : null} onLink={change} />
      )}
      <p className="setup-act">
        <button type="button" disabled={link === null || asking} onClick={() => void askIt()}>
          {asking ? words.asking : words.ask}
        </button>
      </p>
      <div role="status">
        {told.said.map((line) => (
          <p key={line}>{line}</p>
        ))}
        {told.value !== null && (
          <p>{words.answered(query, readingWords(fromMeter(told.value, unit), readingUnitOf(unit)))}</p>
        )}
      </div>
      <Line label={words.query} value={query} onChange={setQuery} />
      <Choice
        label={words.unit}
        value={unit}
        values={meterUnits}
        words={(one) => (one === 'counts' ? instrumentTexts.serial.counts : one)}
        onChange={setUnit}
      />
      <Choice
        label={words.every}
        value={every}
        values={paces.includes(every) ? paces : [every, ...paces]}
        words={(one) => words.paces[one] ?? `${one} ms`}
        onChange={setEvery}
      />
    </>
  );
}

function TcpFields({
  initial,
  onLink,
}: {
  readonly initial: Extract<DeviceLink, { by: 'tcp' }> | null;
  readonly onLink: (link: DeviceLink | null) => void;
}): JSX.Element {
  const [host, setHost] = useState(initial?.host ?? '');
  const [port, setPort] = useState(initial === null ? usualPort : String(initial.port));
  const link = useMemo(() => {
    const read = tcpLink.safeParse({ by: 'tcp', host: host.trim(), port: Number(port) });
    return read.success ? read.data : null;
  }, [host, port]);
  useEffect(() => onLink(link), [onLink, link]);
  const isPort = tcpLink.shape.port.safeParse(Number(port)).success;
  return (
    <>
      <Line
        label={words.host}
        hint={words.hostHint}
        value={host}
        invalid={host.trim() !== '' && isPort && link === null}
        onChange={setHost}
      />
      <Line label={words.port} value={port} invalid={!isPort} onChange={setPort} />
    </>
  );
}
