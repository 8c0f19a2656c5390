import { exampleOf } from './example-of.ts';
import type { Form, Key, Keys, MapForm, Variant } from './form.ts';
import { type Report, type Spot, under } from './report.ts';
import { choiceOf, shown } from './shown.ts';
import { refuseUnknown } from './unknown-keys.ts';
import type { Tree, TreeEntry } from './yaml-tree.ts';

/** How the values behind the keys are read, and what a key that is not written stands for. */
export interface ValueReader {
  readonly read: (form: Form, tree: Tree, spot: Spot, report: Report) => unknown;
  readonly absent: (key: Key, spot: Spot, report: Report) => unknown;
}

/** A group of keys, each by its own form; unknown, missing and contradictory keys are refused. */
export function readMap(
  form: MapForm<Keys>,
  tree: Tree,
  spot: Spot,
  report: Report,
  values: ValueReader,
): Readonly<Record<string, unknown>> {
  const { keys, variants } = form;
  const entries = tree.kind === 'map' ? tree.entries : [];
  if (tree.kind !== 'map') {
    const what = tree.kind === 'text' ? shown(tree.text) : tree.kind === 'list' ? 'a list' : 'nothing';
    report.refuse(spot.path, `${what} stands where keys belong`, sketch(form));
  }
  const known = Object.keys(keys);
  const meant = refuseUnknown(entries, known, spot, report);
  const written = new Map(
    entries
      .filter(({ key }) => Object.hasOwn(keys, key) && !meant.has(key))
      .map((entry) => [entry.key, entry]),
  );
  if (variants !== null && tree.kind === 'map') chooseVariant(variants, keys, written, meant, spot, report);
  return Object.fromEntries(
    Object.entries(keys).map(([name, key]) => {
      const place = under(spot, name);
      const entry = written.get(name);
      if (entry !== undefined) return [name, values.read(key.form, entry.value, place, report)];
      const isMissing = key.presence.kind === 'required' && tree.kind === 'map' && !meant.has(name);
      if (isMissing) refuseMissing(name, key.form, spot, report);
      return [name, values.absent(key, place, report)];
    }),
  );
}

function refuseMissing(name: string, form: Form, spot: Spot, report: Report): void {
  report.refuse(under(spot, name).path, `\`${name}\` is missing`, missingMend(name, form));
}

function missingMend(name: string, form: Form): string {
  const written = `Write \`${name}: ${exampleOf(form)}\``;
  switch (form.kind) {
    case 'word':
      return form.words.length === 1 ? `${written}.` : `${written} or another of its words.`;
    case 'either':
      return `Write \`${name}: ${exampleOf(form.form)}\` with your own value, or \`${name}: ${exampleOf(form.word)}\`.`;
    case 'quantity':
    case 'quantity at':
    case 'count':
    case 'name':
    case 'map':
    case 'list':
      return `${written} with your own value.`;
  }
}

function chooseVariant(
  variants: readonly Variant[],
  keys: Keys,
  written: ReadonlyMap<string, TreeEntry>,
  meant: ReadonlySet<string>,
  spot: Spot,
  report: Report,
): void {
  const has = (name: string): boolean => written.has(name) || meant.has(name);
  const foreign = ({ needs, allows }: Variant): TreeEntry[] =>
    [...written.values()].filter(({ key }) => !needs.includes(key) && !allows.includes(key));
  if (variants.some((variant) => variant.needs.every(has) && foreign(variant).length === 0)) return;
  const begun =
    variants.find(({ needs }) => needs.every(has)) ?? variants.find(({ needs }) => needs.some(has));
  if (begun === undefined) {
    const choices = variants.map(({ needs }) => needs.map((name) => `\`${name}\``).join(' with '));
    const what = `this does not say what it is: ${choiceOf(choices)} is missing`;
    const name = variants[0]?.needs[0] ?? '';
    report.refuse(spot.path, what, `Write \`${name}: ${exampleOf(keys[name]!.form)}\` with your own value.`);
    return;
  }
  for (const name of begun.needs.filter((name) => !has(name)))
    refuseMissing(name, keys[name]!.form, spot, report);
  for (const { key, at } of foreign(begun)) {
    const what = `\`${key}\` does not go together with \`${begun.needs.filter(has).join('` and `')}\``;
    report.refuseAt(at, under(spot, key).path, what, `Take out \`${key}\`.`);
  }
}

/** What a group of keys could look like, for a mend. */
function sketch(form: MapForm<Keys>): string {
  return `Write \`${exampleOf(form)}\` with your own values.`;
}
