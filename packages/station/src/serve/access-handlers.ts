import { networkInterfaces } from 'node:os';
import { type DevicesAnswer, type KeptDevice, type PairingAnswer, timeText } from '@coreward/contract';
import { renderSVG } from 'uqr';
import { type Door, networkAddresses } from '../access/door.ts';
import { hashOf, type Who } from '../access/session.ts';
import { Declined } from '../declined.ts';
import { newId, newSecret } from '../world.ts';
import type { SomeHandlers } from './call.ts';
import { mustBeHere } from './must-be-here.ts';
import type { Rooms } from './rooms.ts';

/** Where another machine finds the pairing page. The code stands behind `#`, which no browser sends anywhere. */
export const pairingAddresses = ({ port }: Door, code: string): readonly string[] =>
  networkAddresses(networkInterfaces()).map((address) => `https://${address}:${port}/pair#${code}`);

/** Who may reach the station. */
export function accessHandlers({
  book,
  pairing,
  network,
  revoked,
}: Pick<Rooms, 'book' | 'pairing' | 'network' | 'revoked'>): SomeHandlers<
  'pair' | 'makePairing' | 'devices' | 'revokeDevice'
> {
  const devices = (who: Who): DevicesAnswer => ({
    devices: [...book.devices.all()],
    you: who.kind === 'paired' ? who.device.id : null,
  });
  return {
    pair({ request: { code, name }, door, giveCookie }): KeptDevice {
      if (door.kind === 'here') {
        throw new Declined('forbidden', {
          where: 'pairing',
          what: 'this is the station’s own computer, which needs no pairing',
          mend: 'Reload the page.',
        });
      }
      if (!pairing.use(code)) {
        throw new Declined('forbidden', {
          where: 'code',
          what: 'this code does not work, or no longer',
          mend: 'Ask for a fresh code on the station’s computer and use it within five minutes.',
        });
      }
      const secret = newSecret(book.world);
      const device = book.addDevice(newId(book.world), name, hashOf(secret));
      giveCookie(secret);
      return device;
    },
    makePairing({ who }): PairingAnswer {
      mustBeHere(who, 'let another machine in');
      if (network === null) {
        throw new Declined('refused', {
          where: 'pairing',
          what: 'the station is not open to other machines',
          mend: 'Start it with `coreward --lan`.',
        });
      }
      const { code, expires } = pairing.open();
      const addresses = pairingAddresses(network, code);
      const picture = renderSVG(addresses[0] ?? code, { border: 4 });
      return { code, expires: timeText.parse(expires.toISOString()), addresses: [...addresses], picture };
    },
    devices: ({ who }) => devices(who),
    revokeDevice({ parameters: { id }, who }) {
      if (!(who.kind === 'paired' && who.device.id === id)) mustBeHere(who, 'revoke another device');
      if (!book.revokeDevice(id)) {
        throw new Declined('unknown', {
          where: `device ${id.slice(0, 100)}`,
          what: 'there is no such device',
          mend: 'Choose one of the list.',
        });
      }
      revoked();
      return devices(who);
    },
  };
}
