import { hostname, type NetworkInterfaceInfo } from 'node:os';

/**
 * A way in. `here` listens on this computer's own loopback address, over HTTP; `network` on every address, over TLS.
 * Who comes by the network door is a stranger until paired, wherever from.
 */
export interface Door {
  readonly kind: 'here' | 'network';
  readonly port: number;
}

/** The machine's network interfaces, as Node tells them. */
export type Interfaces = { readonly [name: string]: readonly NetworkInterfaceInfo[] | undefined };

/** The addresses by which another machine can reach this one; link-local ones left out. */
export function networkAddresses(interfaces: Interfaces): readonly string[] {
  return Object.values(interfaces)
    .flatMap((list) => list ?? [])
    .filter(
      ({ internal, family, address }) => !internal && family === 'IPv4' && !address.startsWith('169.254.'),
    )
    .map(({ address }) => address);
}

/** Names this computer may go by in a local network. */
export function ownNames(name = hostname()): readonly string[] {
  const own = name.toLowerCase();
  if (!/^[a-z0-9-]+(\.[a-z0-9-]+)*$/u.test(own)) return [];
  return own.includes('.') ? [own] : [own, `${own}.local`];
}

/**
 * Every `Host` under which a door answers. Any other means that a foreign name was made to point here (DNS rebinding).
 */
export function hostsOf({ kind, port }: Door, interfaces: Interfaces): readonly string[] {
  const names =
    kind === 'here' ? ['127.0.0.1', 'localhost'] : [...networkAddresses(interfaces), ...ownNames()];
  return names.map((name) => `${name}:${port}`);
}

/** The origin of the station's own pages under one of its hosts. */
export const originOf = ({ kind }: Door, host: string): string =>
  `${kind === 'here' ? 'http' : 'https'}://${host}`;
