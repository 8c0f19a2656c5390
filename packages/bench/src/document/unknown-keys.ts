import { cutByComma, refuseCut } from './cut-by-comma.ts';
import { nearestWord } from './nearest-word.ts';
import { isModeField, keyByOtherName, scaledText } from './other-names.ts';
import { type Report, type Spot, under } from './report.ts';
import { printable, shown } from './shown.ts';
import type { Tree, TreeEntry } from './yaml-tree.ts';

/**
 * Refuses every key that is not among `known`, with the known key that is spelled most like it. Returns the keys that
 * were meant, or whose value is refused already: nobody needs to be told of them again.
 */
export function refuseUnknown(
  entries: readonly TreeEntry[],
  known: readonly string[],
  spot: Spot,
  report: Report,
): ReadonlySet<string> {
  const allMeant = new Set<string>();
  const written = new Set(entries.map(({ key }) => key));
  const cutPieces = refuseCuts(entries, known, spot, report, allMeant);
  for (const [i, { key, at, value }] of entries.entries()) {
    if (known.includes(key)) continue;
    if (cutPieces.has(i)) continue;
    const free = known.filter((name) => !written.has(name));
    if (isModeField(key) && modeComesFrom.every((name) => known.includes(name))) {
      for (const name of modeComesFrom.filter((one) => free.includes(one))) allMeant.add(name);
      report.refuseAt(
        at,
        under(spot, printable(key)).path,
        `${shown(key)} is not a key here`,
        modeFieldMend(free),
      );
      continue;
    }
    const other = keyByOtherName(key, free);
    const meant = other?.key ?? nearestWord(key, free);
    if (meant !== null) allMeant.add(meant);
    const mend = other === null ? mendFor(key, meant, known) : otherNameMend(other, value);
    report.refuseAt(at, under(spot, printable(key)).path, `${shown(key)} is not a key here`, mend);
  }
  return allMeant;
}

/** Refuses values whose numbers commas have cut, and returns the ranks of the pieces that stand for keys behind them. */
function refuseCuts(
  entries: readonly TreeEntry[],
  known: readonly string[],
  spot: Spot,
  report: Report,
  allMeant: Set<string>,
): ReadonlySet<number> {
  const pieces = new Set<number>();
  for (const [i, { key, value }] of entries.entries()) {
    const rest = entries.slice(i + 1);
    const end = rest.findIndex((one) => one.value.kind !== 'nothing' || known.includes(one.key));
    const behind = (end < 0 ? rest : rest.slice(0, end)).map((one) => one.key);
    const cut = pieces.has(i) ? null : cutByComma(value, behind);
    if (cut === null) continue;
    refuseCut(cut, value, under(spot, key).path, report);
    allMeant.add(key);
    for (let rank = 1; rank <= cut.pieces; rank += 1) pieces.add(i + rank);
  }
  return pieces;
}

function mendFor(key: string, meant: string | null, known: readonly string[]): string {
  // what else looks like the rest of a number behind a comma
  if (/^\d/u.test(key)) return 'Write decimals with a point, such as `1.5 mm`.';
  if (meant !== null) return `Write \`${meant}\`.`;
  return `Take it out; the keys here are ${known.map((name) => `\`${name}\``).join(', ')}.`;
}

/** Of a fibre: its fundamental mode is as wide as these make it. */
const modeComesFrom = ['core diameter', 'numerical aperture'];

function modeFieldMend(free: readonly string[]): string {
  const missing = modeComesFrom.filter((name) => free.includes(name)).map((name) => `\`${name}\``);
  return missing.length === 0
    ? 'Take it out: how wide the mode is follows from core and aperture.'
    : `Write ${missing.join(' and ')} instead: how wide the mode is follows from core and aperture.`;
}

/** With the number as it has to stand there, where it is a plain one. */
function otherNameMend(
  { key, factor }: { readonly key: string; readonly factor: number },
  value: Tree,
): string {
  const text = value.kind === 'text' ? (factor === 1 ? value.text : scaledText(value.text, factor)) : null;
  const line = `\`${text === null ? key : `${key}: ${printable(text)}`}\``;
  if (factor === 1) return `Write ${line}.`;
  const share = factor === 2 ? 'twice' : 'half of';
  return `Write ${line}${text === null ? ' with' : ','} ${share} what stands there.`;
}
