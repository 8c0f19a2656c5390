import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { RefusalParts } from '@coreward/bench';

/** One file of the built screens, as it is sent. */
export interface ScreenFile {
  readonly type: string;
  readonly bytes: Buffer;
  readonly zipped: Buffer | null;
  readonly tag: string;
  /** Its name changes with its contents, so that a browser may keep it for good. */
  readonly lasting: boolean;
}

/** Everything there is to send, by address. What is not in it cannot be had, whatever an address says. */
export interface Screens {
  readonly files: ReadonlyMap<string, ScreenFile>;
  /** The page that every address of the app shows; null where the screens have not been built. */
  readonly page: string | null;
}

/** By extension; whatever else lies in the folder is sent as plain bytes. */
const types: { readonly [extension: string]: string } = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  json: 'application/json; charset=utf-8',
  map: 'application/json; charset=utf-8',
  webmanifest: 'application/manifest+json; charset=utf-8',
  svg: 'image/svg+xml',
  png: 'image/png',
  ico: 'image/x-icon',
  woff2: 'font/woff2',
  txt: 'text/plain; charset=utf-8',
};

const worthZipping = /^(text|application\/(json|manifest)|image\/svg)/u;

/** Reads the built screens once: a rebuild under a running station does not mix two builds. */
export function screensIn(folder: string): Screens {
  const paths = filesBelow(folder);
  const page = paths.includes('index.html') ? readFileSync(join(folder, 'index.html'), 'utf8') : null;
  const files = paths
    .filter((path) => path !== 'index.html')
    .map((path) => [`/${path}`, screenFile(folder, path)] as const);
  return { files: new Map(files), page };
}

function screenFile(folder: string, path: string): ScreenFile {
  const bytes = readFileSync(join(folder, path));
  const type = types[/\.([^.]+)$/u.exec(path)?.[1] ?? ''] ?? 'application/octet-stream';
  return {
    type,
    bytes,
    zipped: worthZipping.test(type) && bytes.length > 1000 && !path.endsWith('.map') ? gzipSync(bytes) : null,
    tag: `"${createHash('sha256').update(bytes).digest('base64url').slice(0, 22)}"`,
    lasting: path.startsWith('assets/'),
  };
}

/** Paths with `/` of every plain file below; none if there is no such folder. */
function filesBelow(folder: string): readonly string[] {
  try {
    return readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
      .filter((path) => statSync(join(folder, path)).size < 20e6);
  } catch {
    return [];
  }
}

/** The page with the mark by which it may make style sheets of its own (see `pagePolicy`). */
export const markedPage = (page: string, nonce: string): string =>
  page.replace(
    /<head[^>]*>/u,
    (head) => `${head}\n    <meta property="csp-nonce" nonce="${nonce}" content="${nonce}">`,
  );

/** What stands there while the screens have not been built. */
export const noScreens = `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><title>Coreward</title></head>
<body><h1>Coreward</h1><p>The screens have not been built. Type <code>npm run build</code> in the checkout and start again.</p></body>
</html>
`;

/** What stands there for somebody who opened an address that is not answered. */
export const declinedPage = (refused: readonly RefusalParts[]): string => `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Coreward</title></head>
<body><h1>Coreward</h1>${refused.map(({ what, mend }) => `<p>${asText(what)}. ${asText(mend)}</p>`).join('')}</body>
</html>
`;

const asText = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
