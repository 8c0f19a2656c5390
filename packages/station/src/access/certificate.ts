import { X509Certificate } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { tellingTrouble } from '../bench-book/book-trouble.ts';
import { ownNames } from './door.ts';

/** A certificate and its key, as PEM. */
export interface Certificate {
  readonly certificate: string;
  readonly privateKey: string;
  /** SHA-256, as a browser shows it: `AB:CD:…`. */
  readonly fingerprint: string;
}

const day = 86_400_000;
/** A certificate is made for so long… */
const life = 365 * day;
/** …and made anew at a start when less than this is left. */
const renewWithin = 30 * day;

/**
 * The station's certificate, made by itself on the first start that needs it and kept in the data folder. Nobody vouches
 * for it: a browser warns once, and the fingerprint that the station prints tells whether it is the right one.
 *
 * @param addresses of this computer, to stand in it
 */
export async function certificateIn(
  folder: string,
  addresses: readonly string[],
  now: Date,
): Promise<Certificate> {
  const file = join(folder, 'certificate.pem');
  const keyFile = join(folder, 'certificate-key.pem');
  if (existsSync(file) && existsSync(keyFile)) {
    const [certificate, privateKey] = tellingTrouble(folder, () => [
      readFileSync(file, 'utf8'),
      readFileSync(keyFile, 'utf8'),
    ]);
    const kept = { certificate, privateKey, fingerprint: fingerprintOf(certificate) };
    if (Date.parse(new X509Certificate(certificate).validTo) - now.getTime() > renewWithin) return kept;
  }
  // an eighth of a start, for a certificate that one start in a year makes
  // by its default: bundled, a CommonJS module has no names of its own
  const { generate } = (await import('selfsigned')).default;
  const made = await generate([{ name: 'commonName', value: 'Coreward station' }], {
    keyType: 'ec',
    curve: 'P-256',
    algorithm: 'sha256',
    notBeforeDate: new Date(now.getTime() - day), // clocks of phones differ
    notAfterDate: new Date(now.getTime() + life),
    extensions: [
      { name: 'basicConstraints', cA: false, critical: true },
      { name: 'keyUsage', digitalSignature: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      {
        name: 'subjectAltName',
        altNames: [
          ...addresses.map((ip) => ({ type: 7 as const, ip })),
          ...ownNames().map((value) => ({ type: 2 as const, value })),
        ],
      },
    ],
  });
  tellingTrouble(folder, () => {
    writeFileSync(keyFile, made.private, { mode: 0o600 });
    writeFileSync(file, made.cert, { mode: 0o600 });
  });
  return { certificate: made.cert, privateKey: made.private, fingerprint: fingerprintOf(made.cert) };
}

const fingerprintOf = (certificate: string): string => new X509Certificate(certificate).fingerprint256;
