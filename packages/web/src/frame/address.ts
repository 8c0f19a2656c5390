/** A page of the web app; every one has an address that can be bookmarked and reloaded. */
export type Page =
  | { readonly page: 'start' }
  | { readonly page: 'new' }
  | { readonly page: 'launch'; readonly id: string }
  | { readonly page: 'versions' | 'cautions' | 'steps' | 'steer' | 'walk'; readonly id: string }
  /** With a part that is unfolded; not read back from a path, for it stands behind `#`. */
  | { readonly page: 'drawer'; readonly part?: string }
  | { readonly page: 'part-versions'; readonly id: string }
  | { readonly page: 'gauges' }
  | GaugeAddress
  | { readonly page: 'match' }
  | { readonly page: 'instruments' }
  | { readonly page: 'book' }
  | { readonly page: 'pair' }
  | { readonly page: 'unknown'; readonly path: string };

/** A gauge: for whom it is used, and which key it is to fill. */
export interface GaugeAddress {
  readonly page: 'gauge';
  readonly gauge: string;
  readonly about: GaugeAbout | null;
  /** `laser.beam.waist diameter`; not read back from a path, for it stands behind `#`. */
  readonly fills?: string;
}

/** A launch or a part that is to be known better, or readings of the bench book that are opened again. */
export interface GaugeAbout {
  readonly kind: 'launch' | 'part' | 'reading';
  readonly id: string;
}

const plain = {
  '/': 'start',
  '/launch/new': 'new',
  '/drawer': 'drawer',
  '/gauge': 'gauges',
  '/match': 'match',
  '/instruments': 'instruments',
  '/book': 'book',
  '/pair': 'pair',
} as const;

const idPattern = '[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}';
const launchPattern = new RegExp(`^/launch/(${idPattern})(?:/(versions|cautions|steps|steer|walk))?$`, 'u');
const partPattern = new RegExp(`^/drawer/(${idPattern})/versions$`, 'u');
const gaugePattern = new RegExp(`^/gauge/([a-z][a-z0-9-]*)(?:/(launch|part|reading)/(${idPattern}))?$`, 'u');

/** The page at a path; a path that leads nowhere is a page of its own. */
export function pageAt(path: string): Page {
  const trimmed = path.length > 1 ? path.replace(/\/+$/u, '') : path;
  if (Object.hasOwn(plain, trimmed)) return { page: plain[trimmed as keyof typeof plain] };
  const [, id, of] = launchPattern.exec(trimmed) ?? [];
  if (id !== undefined)
    return {
      page: of === undefined ? 'launch' : (of as 'versions' | 'cautions' | 'steps' | 'steer' | 'walk'),
      id,
    };
  const [, part] = partPattern.exec(trimmed) ?? [];
  if (part !== undefined) return { page: 'part-versions', id: part };
  const [, gauge, kind, about] = gaugePattern.exec(trimmed) ?? [];
  if (gauge !== undefined) {
    const isAbout = kind !== undefined && about !== undefined;
    return { page: 'gauge', gauge, about: isAbout ? { kind: kind as GaugeAbout['kind'], id: about } : null };
  }
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
    case 'walk':
    case 'steer':
      return `/launch/${page.id}/${page.page}`;
    case 'drawer':
      return page.part === undefined ? '/drawer' : `/drawer#${page.part}`;
    case 'part-versions':
      return `/drawer/${page.id}/versions`;
    case 'gauge': {
      const { gauge, about, fills } = page;
      const of = about === null ? '' : `/${about.kind}/${about.id}`;
      return `/gauge/${gauge}${of}${fills === undefined ? '' : `#${encodeURIComponent(fills)}`}`;
    }
    case 'unknown':
      return page.path;
    default:
      return Object.entries(plain).find(([, name]) => name === page.page)?.[0] ?? '/';
  }
}
