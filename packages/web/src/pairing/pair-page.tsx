import { type DevicesAnswer, type PairingAnswer, routes } from '@coreward/contract';
import { type FormEvent, type JSX, useEffect, useState } from 'react';
import { pathOf } from '../frame/address.ts';
import { PageHeading } from '../frame/page-heading.tsx';
import { timeText } from '../frame/time-text.ts';
import { ask, NotDone } from '../keeping/client.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { useNewest } from '../keeping/use-newest.ts';
import { pairingTexts } from '../texts/pairing.ts';
import { useStranger } from './use-stranger.ts';
import './pairing.css';

/** Lets other devices in, or this one. */
export function PairPage(): JSX.Element {
  const { connection, you } = useKept();
  return connection === 'unpaired' ? <PairThis /> : <Devices here={you === 'here'} />;
}

function whyNot(error: unknown): string {
  return error instanceof NotDone
    ? error.answer.refused.map(({ what, mend }) => `${what}. ${mend}`).join(' ')
    : pairingTexts.failed;
}

function Devices({ here }: { readonly here: boolean }): JSX.Element {
  const keeping = useKeeping();
  const { lan, connection } = useKept();
  const [answer, setAnswer] = useState<DevicesAnswer | null>(null);
  const [pairing, setPairing] = useState<PairingAnswer | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  // a list that was asked for earlier would show a device that is shut out by now
  const devices = useNewest();
  const codes = useNewest();
  useEffect(() => {
    if (connection !== 'joined') return;
    devices
      .of(ask(keeping.world, routes.devices, {}, null))
      .then(setAnswer, (error: unknown) => setTrouble(whyNot(error)));
  }, [keeping, connection, devices]);
  const make = (): void => {
    setTrouble(null);
    codes
      .of(ask(keeping.world, routes.makePairing, {}, null))
      .then(setPairing, (error: unknown) => setTrouble(whyNot(error)));
  };
  const revoke = (id: string): void => {
    setTrouble(null);
    devices
      .of(ask(keeping.world, routes.revokeDevice, { id }, null))
      .then(setAnswer, (error: unknown) => setTrouble(whyNot(error)));
  };
  return (
    <>
      <PageHeading title={pairingTexts.title} />
      <p>{pairingTexts.intro}</p>
      {here && !lan && <Closed />}
      {!here && connection === 'joined' && <p className="quiet">{pairingTexts.onlyThere}</p>}
      {here && lan && (
        <section>
          <button type="button" onClick={make}>
            {pairing === null ? pairingTexts.make : pairingTexts.makeAnother}
          </button>
          {pairing !== null && <Pairing pairing={pairing} />}
        </section>
      )}
      {trouble !== null && (
        <p role="alert" className="refusal">
          {trouble}
        </p>
      )}
      {answer !== null && (
        <section className="pairing-part">
          <h2>{pairingTexts.devices}</h2>
          {answer.devices.length === 0 && <p className="quiet">{pairingTexts.none}</p>}
          <ul className="devices">
            {answer.devices.map(({ id, name, paired, seen }) => (
              <li key={id}>
                {name} {answer.you === id && <span className="mark">{pairingTexts.you}</span>}{' '}
                <span className="quiet">
                  {pairingTexts.paired(timeText(paired))}, {pairingTexts.seen(timeText(seen))}
                </span>{' '}
                {(here || answer.you === id) && (
                  <button
                    type="button"
                    className="quiet-button"
                    aria-label={pairingTexts.revokeLabel(name)}
                    onClick={() => revoke(id)}
                  >
                    {pairingTexts.revoke}
                  </button>
                )}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

function Closed(): JSX.Element {
  return (
    <p>
      {pairingTexts.closed
        .split('`')
        .map((piece, index) =>
          index % 2 === 0 ? <span key={piece}>{piece}</span> : <code key={piece}>{piece}</code>,
        )}
    </p>
  );
}

function Pairing({
  pairing: { code, expires, addresses, picture },
}: {
  readonly pairing: PairingAnswer;
}): JSX.Element {
  return (
    <div role="status">
      <p>
        {pairingTexts.code}: <strong className="code">{code}</strong>
      </p>
      <p className="quiet">{pairingTexts.expires(timeText(expires))}</p>
      <p>{pairingTexts.open}</p>
      <ul>
        {addresses.map((address) => (
          <li key={address}>
            <code>{address}</code>
          </li>
        ))}
      </ul>
      <p>{pairingTexts.scan}</p>
      <img
        className="qr"
        alt={pairingTexts.picture}
        src={`data:image/svg+xml;utf8,${encodeURIComponent(picture)}`}
        width="220"
        height="220"
      />
      <p className="quiet">{pairingTexts.certificate}</p>
    </div>
  );
}

/** A device that is not let in: why, and how it is. */
function PairThis(): JSX.Element {
  const words = pairingTexts.pair;
  const isStranger = useStranger();
  return (
    <>
      <PageHeading title={words.title} />
      <p>{isStranger ? words.why : words.whyHere}</p>
      {!isStranger && (
        <p>
          <button type="button" className="act" onClick={() => window.location.reload()}>
            {words.reloadAct}
          </button>
        </p>
      )}
      <ol className="pair-steps">
        {words.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <PairForm />
      <p className="quiet">{words.after}</p>
    </>
  );
}

function PairForm(): JSX.Element {
  const keeping = useKeeping();
  const words = pairingTexts.pair;
  const [code, setCode] = useState(() => window.location.hash.slice(1));
  const [name, setName] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  const pair = (event: FormEvent): void => {
    event.preventDefault();
    setTrouble(code.trim() === '' ? words.noCode : null);
    if (code.trim() === '') return;
    const request = { code: code.trim().toUpperCase(), name: name.trim() || words.namePlaceholder };
    const { pathname } = window.location;
    ask(keeping.world, routes.pair, {}, request).then(
      // to the page that was asked for; the code is left behind
      () => window.location.assign(pathname === pathOf({ page: 'pair' }) ? '/' : pathname),
      (error: unknown) => setTrouble(whyNot(error)),
    );
  };
  return (
    <>
      <form onSubmit={pair} className="pair-form">
        <label>
          {words.code}
          <input
            type="text"
            autoComplete="off"
            autoCapitalize="characters"
            spellCheck={false}
            value={code}
            onChange={({ target }) => setCode(target.value)}
          />
        </label>
        <label>
          {words.name}
          <input
            type="text"
            maxLength={60}
            placeholder={words.namePlaceholder}
            value={name}
            onChange={({ target }) => setName(target.value)}
          />
        </label>
        <button type="submit" className="act">
          {words.act}
        </button>
      </form>
      {trouble !== null && (
        <p role="alert" className="refusal">
          {trouble}
        </p>
      )}
    </>
  );
}
