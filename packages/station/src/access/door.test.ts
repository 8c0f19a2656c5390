import type { NetworkInterfaceInfo } from 'node:os';
import { expect, test } from 'vitest';
import { hostsOf, networkAddresses, originOf, ownNames } from './door.ts';

const at = (address: string, family: 'IPv4' | 'IPv6', internal = false): NetworkInterfaceInfo =>
  ({ address, family, internal, netmask: '', mac: '', cidr: null }) as NetworkInterfaceInfo;

const interfaces = {
  lo: [at('127.0.0.1', 'IPv4', true), at('::1', 'IPv6', true)],
  wired: [at('192.168.1.20', 'IPv4'), at('fe80::1', 'IPv6')],
  // RFC 3927: a machine gives itself such an address when nobody else gave it one; no other subnet reaches it
  unplugged: [at('169.254.7.7', 'IPv4')],
  gone: undefined,
};

test('other machines reach this one by what the network has given it, and by nothing else', () => {
  expect(networkAddresses(interfaces)).toEqual(['192.168.1.20']);
});

test('a computer goes by its name, and by that name in the local network (RFC 6762, 3); an odd name is none', () => {
  expect(ownNames('Bench-PC')).toEqual(['bench-pc', 'bench-pc.local']);
  expect(ownNames('pc.lab.example')).toEqual(['pc.lab.example']);
  for (const odd of ['', 'my bench', 'pc.', '.pc', 'pc:80', 'pc/x', 'péché'])
    expect(ownNames(odd)).toEqual([]);
});

test('the door here answers to this computer alone, over http; that of the network to its addresses, over https', () => {
  const [here, network] = [
    { kind: 'here', port: 4000 },
    { kind: 'network', port: 4001 },
  ] as const;
  expect(hostsOf(here, interfaces)).toEqual(['127.0.0.1:4000', 'localhost:4000']);
  const hosts = hostsOf(network, interfaces);
  expect(hosts).toContain('192.168.1.20:4001');
  expect(hosts.some((host) => /^(127\.|169\.254\.)/u.test(host))).toBe(false);
  expect(originOf(here, 'localhost:4000')).toBe('http://localhost:4000');
  expect(originOf(network, '192.168.1.20:4001')).toBe('https://192.168.1.20:4001');
});
