/** The glasses known here, by name. */
import { OutOfRange } from '../out-of-range.ts';
import { crystals } from './crystals.ts';
import type { Glass } from './glass.ts';
import { opticalGlasses } from './optical-glasses.ts';
import { plastics } from './plastics.ts';
import { fusedSilica, germania } from './silica.ts';

const glasses: readonly Glass[] = [fusedSilica, germania, ...opticalGlasses, ...crystals, ...plastics];

/** Every glass, crystal and plastic known here, as spelled here. */
export const glassNames: readonly string[] = glasses.map((glass) => glass.name);

/**
 * Case, spaces, hyphens and brackets do not tell glasses apart; letters and digits do.
 * `BK7` is therefore not `N-BK7`: it was another melt, and the difference is asked about, not assumed away.
 */
function bare(name: string): string {
  return name.toLowerCase().replace(/[^a-z0-9]/g, '');
}

const byBareName: ReadonlyMap<string, Glass> = new Map(
  glasses.flatMap((glass) => [glass.name, ...glass.alsoCalled].map((name) => [bare(name), glass] as const)),
);

/**
 * The glass of this name; case, spaces and hyphens do not matter.
 *
 * @throws {OutOfRange} if no glass is called so; the mend names the nearest one
 */
export function glassNamed(name: string): Glass {
  const glass = byBareName.get(bare(name));
  if (glass !== undefined) return glass;
  const near = similarNames(name);
  throw new OutOfRange({
    where: 'glass',
    what: `no glass is known here as \`${name}\``,
    mend:
      near.length > 0
        ? `Write ${near.map((each) => `\`${each}\``).join(' or ')} if that is meant.`
        : `Write one of: ${glassNames.join(', ')}.`,
  });
}

/** Names that contain what was written, or are contained in it: an older designation, a crystal without its ray. */
function similarNames(name: string): readonly string[] {
  const asked = bare(name);
  // one letter is in almost every name
  if (asked.length < 2) return [];
  const found = [...byBareName]
    .filter(([known]) => known.includes(asked) || (known.length > 2 && asked.includes(known)))
    .map(([, glass]) => glass.name);
  return [...new Set(found)];
}
