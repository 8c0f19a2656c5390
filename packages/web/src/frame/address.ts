/** A page of the web app; every one has an address that can be bookmarked and reloaded. */
export type Page =
  | { readonly page: 'start' }
  | { readonly page: 'new' }
  | { readonly page: 'launch'; readonly id: string }
  | { readonly page: 'versions' | 'cautions' | 'steps'; readonly id: string }
  | { readonly page: 'drawer' }
  | { readonly page: 'match' }
  | { readonly page: 'book' }
  | { readonly page: 'pair' }
  | { readonly page: 'unknown'; readonly path: string };

const plain = {
  '/': 'start',
  '/launch/new': 'new',
  '/drawer': 'drawer',
  '/match': 'match',
  '/book': 'book',
  '/pair': 'pair',
} as const;

const idPattern = '[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}';
const launchPattern = new RegExp(`^/launch/(${idPattern})(?:/(versions|cautions|steps))?$`, 'u');

/** The page at a path; a path that leads nowhere is a page of its own. */
export function pageAt(path: string): Page {
  const trimmed = path.length > 1 ? path.replace(/\/+$/u, '') : path;
  if (Object.hasOwn(plain, trimmed)) return { page: plain[trimmed as keyof typeof plain] };
  const [, id, of] = launchPattern.exec(trimmed) ?? [];
  if (id !== undefined)
    return { page: of === undefined ? 'launch' : (of as 'versions' | 'cautions' | 'steps'), id };
  return { page: 'unknown', path };
}

/** The path of a page: what `pageAt` reads. */
export function pathOf(page: Page): string {
  switch (page.page) {
    case 'launch':
      return `/launch/${page.id}`;
    case 'versions':
    case 'cautions':
    case 'steps':
      return `/launch/${page.id}/${page.page}`;
    case 'unknown':
      return page.path;
    default:
      return Object.entries(plain).find(([, name]) => name === page.page)?.[0] ?? '/';
  }
}
