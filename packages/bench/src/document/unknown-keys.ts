import { nearestWord } from './nearest-word.ts';
import { type Report, type Spot, under } from './report.ts';
import { printable, shown } from './shown.ts';
import type { TreeEntry } from './yaml-tree.ts';

/**
 * Refuses every key that is not among `known`, with the known key that is spelled most like it. Returns the keys that
 * were meant: nobody needs to be told that they are missing as well.
 */
export function refuseUnknown(
  entries: readonly TreeEntry[],
  known: readonly string[],
  spot: Spot,
  report: Report,
): ReadonlySet<string> {
  const allMeant = new Set<string>();
  const written = new Set(entries.map(({ key }) => key));
  for (const { key, at } of entries) {
    if (known.includes(key)) continue;
    const meant = nearestWord(
      key,
      known.filter((name) => !written.has(name)),
    );
    if (meant !== null) allMeant.add(meant);
    const mend = mendFor(key, meant, known);
    report.refuseAt(at, under(spot, printable(key)).path, `${shown(key)} is not a key here`, mend);
  }
  return allMeant;
}

function mendFor(key: string, meant: string | null, known: readonly string[]): string {
  // `{ at: 1,5 mm }` is a key `5 mm` to YAML
  if (/^\d/u.test(key)) return 'Write decimals with a point, such as `1.5 mm`.';
  if (meant !== null) return `Write \`${meant}\`.`;
  return `Take it out; the keys here are ${known.map((name) => `\`${name}\``).join(', ')}.`;
}
