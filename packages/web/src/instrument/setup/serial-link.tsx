import { routes, type SerialLink, serialLink } from '@coreward/contract';
import { type JSX, useCallback, useEffect, useMemo, useState } from 'react';
import { ask } from '../../keeping/client.ts';
import { useKeeping } from '../../keeping/use-keeping.ts';
import { instrumentTexts } from '../../texts/instrument.ts';
import { done } from '../done.ts';
import { Choice, Line } from './choice.tsx';

const bauds = [1200, 2400, 4800, 9600, 19200, 38400, 57600, 115200, 230400, 460800, 921600] as const;
const words = instrumentTexts.serial;

/** Which serial port, and how fast; null while something is missing. */
export function SerialLinkFields({
  initial,
  onLink,
}: {
  readonly initial: SerialLink | null;
  readonly onLink: (link: SerialLink | null) => void;
}): JSX.Element {
  const { world } = useKeeping();
  const [ports, setPorts] = useState<readonly { readonly path: string; readonly label: string }[] | null>(
    null,
  );
  const [said, setSaid] = useState<string | null>(null);
  const [chosen, setChosen] = useState(initial?.path ?? '');
  const [written, setWritten] = useState('');
  const [baudRate, setBaudRate] = useState<number>(initial?.baudRate ?? 115200);
  const look = useCallback(async (): Promise<void> => {
    const found = await done(ask(world, routes.ports, {}, null));
    setSaid(found.ok ? null : found.said);
    if (!found.ok) return;
    setPorts(found.answer.ports);
    setChosen((before) => (before === '' ? (found.answer.ports[0]?.path ?? '') : before));
  }, [world]);
  useEffect(() => {
    void look();
  }, [look]);
  const path = chosen === '' ? written.trim() : chosen;
  const link = useMemo(() => {
    const read = serialLink.safeParse({ by: 'serial', path, baudRate });
    return read.success ? read.data : null;
  }, [path, baudRate]);
  useEffect(() => onLink(link), [onLink, link]);
  const listed = (ports ?? []).map((port) => port.path);
  const own = initial === null || listed.includes(initial.path) ? [] : [initial.path];
  const labelOf = (one: string): string =>
    one === '' ? words.other : (ports?.find((port) => port.path === one)?.label ?? one);
  return (
    <>
      <div className="setup-row">
        <Choice
          label={words.port}
          value={chosen}
          values={[...listed, ...own, '']}
          words={labelOf}
          onChange={setChosen}
        />
        <button type="button" className="quiet-button" onClick={() => void look()}>
          {words.look}
        </button>
      </div>
      {said !== null && (
        <p role="alert" className="refusal">
          {said}
        </p>
      )}
      {ports?.length === 0 && said === null && <p className="quiet">{words.noPorts}</p>}
      {chosen === '' && (
        <Line
          label={words.path}
          hint={words.pathHint}
          value={written}
          invalid={written.trim() !== '' && link === null}
          onChange={setWritten}
        />
      )}
      <Choice
        label={words.baud}
        value={baudRate}
        values={bauds.some((one) => one === baudRate) ? bauds : [baudRate, ...bauds]}
        words={String}
        onChange={setBaudRate}
      />
    </>
  );
}
