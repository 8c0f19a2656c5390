import { type Entry, type Origin, origins } from '../quantity/quantity.ts';
import { dimensionFacts } from '../units/dimension.ts';
import { readQuantity } from '../units/read-quantity.ts';
import { defaultUncertainty } from './default-uncertainty.ts';
import { exampleOf } from './example-of.ts';
import type { QuantityForm } from './form.ts';
import { longestNote } from './lengths.ts';
import { type Report, type Spot, under } from './report.ts';
import { choiceOf, isPrintable, shown } from './shown.ts';
import { refuseUnknown } from './unknown-keys.ts';
import type { Tree } from './yaml-tree.ts';

/** Stands for what could not be read: comparisons with it are false, so that no second refusal follows from the first. */
export function unreadEntry(key: string): Entry {
  return {
    key,
    value: Number.NaN,
    uncertainty: Number.NaN,
    shape: 'normal',
    origin: 'assumed',
    defaulted: 'value',
  };
}

interface Told {
  readonly origin: Origin;
  readonly note: string | null;
}

/** What a document says about an entry when it says nothing: the least trusted origin. */
const untold: Told = { origin: 'assumed', note: null };

/** A quantity from its text; `spot` is where the quantity stands, `path` where the text does. */
export function entryFromText(
  form: QuantityForm,
  text: string,
  spot: Spot,
  path: string,
  report: Report,
  { origin, note }: Told = untold,
): Entry {
  const { dimension, lowest, highest } = form;
  const read = readQuantity(text, dimension, {
    ...(lowest.included ? { min: lowest.value } : { positive: true }),
    max: highest.value,
    example: exampleOf(form),
  });
  if (!read.ok) {
    report.refuse(path, read.what, read.mend);
    return unreadEntry(spot.key);
  }
  const { value, uncertainty, shape } = read;
  const told = { key: spot.key, value, origin, ...(note === null ? {} : { note }) };
  if (uncertainty !== null) return { ...told, uncertainty, shape, defaulted: 'nothing' };
  return { ...told, ...defaultUncertainty(form, value), defaulted: 'uncertainty' };
}

/** The entry of a key that is not written: `text` as its user might have written it, `why` as its note. */
export function defaultEntry(
  form: QuantityForm,
  text: string,
  why: string,
  spot: Spot,
  report: Report,
): Entry {
  return { ...entryFromText(form, text, spot, spot.path, report), defaulted: 'value', note: why };
}

/** A quantity as it stands in a document: a text, or a map with its origin. `others` are further keys of that map. */
export function readEntry(
  form: QuantityForm,
  tree: Tree,
  spot: Spot,
  report: Report,
  others: readonly string[] = [],
): Entry {
  switch (tree.kind) {
    case 'text':
      return entryFromText(form, tree.text, spot, spot.path, report);
    case 'map':
      return readTold(
        form,
        tree,
        spot,
        report,
        refuseUnknown(tree.entries, [...toldKeys, ...others], spot, report),
      );
    case 'list':
    case 'nothing': {
      const what =
        tree.kind === 'list' ? 'a list stands where a quantity belongs' : 'nothing is written here';
      const { name } = dimensionFacts[form.dimension];
      report.refuse(spot.path, what, `Write ${name}, such as \`${exampleOf(form)}\`, or take the key out.`);
      return unreadEntry(spot.key);
    }
  }
}

/** The keys of the map that a quantity may be. */
export const toldKeys = ['value', 'origin', 'note'] as const;

function readTold(
  form: QuantityForm,
  tree: Tree & { kind: 'map' },
  spot: Spot,
  report: Report,
  meant: ReadonlySet<string>,
): Entry {
  const texts = new Map<string, string>();
  for (const { key, value } of tree.entries) {
    if (!toldKeys.some((known) => known === key) || meant.has(key)) continue;
    const { path } = under(spot, key);
    report.locate(path, value.at);
    if (value.kind === 'text') texts.set(key, value.text);
    else
      report.refuse(
        path,
        `behind \`${key}\` stands no text`,
        `Write one text behind \`${key}\`, or take it out.`,
      );
  }
  const value = texts.get('value');
  if (value === undefined) {
    if (!tree.entries.some(({ key }) => key === 'value') && !meant.has('value')) {
      const mend = `Write \`value: ${exampleOf(form)}\` into the braces with your own value.`;
      report.refuse(spot.path, 'this quantity has no `value`', mend);
    }
    return unreadEntry(spot.key);
  }
  const told = {
    origin: readOrigin(texts.get('origin') ?? untold.origin, under(spot, 'origin').path, report),
    note: readNote(texts.get('note') ?? null, under(spot, 'note').path, report),
  };
  return entryFromText(form, value, spot, under(spot, 'value').path, report, told);
}

function readOrigin(text: string, path: string, report: Report): Origin {
  const origin = origins.find((known) => known === text);
  if (origin !== undefined) return origin;
  report.refuse(
    path,
    `${shown(text)} is no origin`,
    `Write ${choiceOf(origins.map((known) => `\`${known}\``))}.`,
  );
  return untold.origin;
}

function readNote(text: string | null, path: string, report: Report): string | null {
  if (text === null || (text.length <= longestNote && isPrintable(text))) {
    return text;
  }
  report.refuse(
    path,
    `the note ${shown(text)} is too long or cannot be printed`,
    'Write one line of up to 500 letters.',
  );
  return null;
}
