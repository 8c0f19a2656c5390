import { cutByComma, refuseCut } from './cut-by-comma.ts';
import { exampleOf } from './example-of.ts';
import type { CountForm, EntryAt, Form, Key, ListForm, QuantityAtForm, Read, WordForm } from './form.ts';
import { longestList, longestName } from './lengths.ts';
import { nearestWord } from './nearest-word.ts';
import { defaultEntry, readEntry, unreadEntry } from './read-entry.ts';
import { readMap } from './read-map.ts';
import { documentSpot, itemSpot, type Report, reportOn, type Spot, under } from './report.ts';
import { choiceOf, isPrintable, shown } from './shown.ts';
import type { Tree } from './yaml-tree.ts';

/**
 * What stands at a place, read by its form. Whatever cannot be read is refused through `report` and replaced by
 * something of the right type that no check complains about, so that one mistake gives one refusal.
 */
export function readForm<F extends Form>(form: F, tree: Tree, spot: Spot, report: Report): Read<F> {
  // The compiler cannot follow F through the switch; Read<F> in form.ts mirrors it case by case.
  return readAny(form, tree, spot, report) as Read<F>;
}

function readAny(form: Form, tree: Tree, spot: Spot, report: Report): unknown {
  report.locate(spot.path, tree.at);
  switch (form.kind) {
    case 'quantity':
      return readEntry(form, tree, spot, report);
    case 'quantity at':
      return readEntryAt(form, tree, spot, report);
    case 'count':
      return readCount(form, tree, spot, report);
    case 'word':
      return readWord(form, tree, spot, report);
    case 'name':
      return readName(tree, spot, report);
    case 'map': {
      const part = tree.kind === 'text' ? partWith(tree, form) : null;
      if (part === null) return readMap(form, tree, spot, report, { read: readAny, absent });
      report.refuse(spot.path, `${describe(tree)} stands where keys belong`, `Write \`${part}\`.`);
      return stand(form, spot, report);
    }
    case 'list':
      return readList(form, tree, spot, report);
    case 'either': {
      const word = tree.kind === 'text' ? knownWord(form.word, tree.text) : null;
      if (word !== null) return word;
      // `colimator: non` is a misspelt word, not a misspelt part
      const partExpected = form.form.kind === 'map' || form.form.kind === 'list';
      const isWord = tree.kind === 'text' && partExpected && partWith(tree, form.form) === null;
      return isWord
        ? readWord(form.word, tree, spot, report, exampleOf(form.form))
        : readAny(form.form, tree, spot, report);
    }
  }
}

/** The part with the text behind its first key that can take it: `{ set for: 6.2 mm }` for `6.2 mm`. */
function partWith(tree: Tree & { kind: 'text' }, form: Form): string | null {
  if (form.kind !== 'map') return null;
  const fits = Object.entries(form.keys).find(([, { form: inner }]) => {
    // anything is a name, and a group of keys is what this text is not
    if (inner.kind === 'name' || inner.kind === 'map' || inner.kind === 'list') return false;
    const trial = reportOn('');
    readAny(inner, tree, documentSpot, trial);
    return trial.refusals().length === 0;
  });
  return fits === undefined ? null : `{ ${fits[0]}: ${tree.text} }`;
}

/** What a key that is not written stands for. */
function absent({ form, presence }: Key, spot: Spot, report: Report): unknown {
  if (presence.kind === 'optional') return null;
  if (presence.kind === 'required') return stand(form, spot, report);
  return asDefault(form, presence.value, presence.why, spot, report);
}

function asDefault(form: Form, value: string, why: string, spot: Spot, report: Report): unknown {
  switch (form.kind) {
    case 'quantity':
      return defaultEntry(form, value, why, spot, report);
    case 'quantity at':
      return { entry: defaultEntry(form.value, value, why, spot, report), at: null } satisfies EntryAt;
    case 'count':
      return Number(value);
    case 'word':
    case 'name':
      return value;
    case 'map':
    case 'list':
      return stand(form, spot, report);
    case 'either':
      return form.word.words.includes(value) ? value : asDefault(form.form, value, why, spot, report);
  }
}

/** Something of the form's type where there is nothing to read: what is left out inside goes by its defaults. */
function stand(form: Form, spot: Spot, report: Report): unknown {
  switch (form.kind) {
    case 'quantity':
      return unreadEntry(spot.key);
    case 'quantity at':
      return { entry: unreadEntry(spot.key), at: null } satisfies EntryAt;
    case 'count':
      return form.lowest;
    case 'word':
      return form.words[0];
    case 'name':
      return '';
    case 'map':
      return Object.fromEntries(
        Object.entries(form.keys).map(([name, key]) => [name, absent(key, under(spot, name), report)]),
      );
    case 'list':
      return [];
    case 'either':
      return form.word.words[0];
  }
}

function readEntryAt(form: QuantityAtForm, tree: Tree, spot: Spot, report: Report): EntryAt {
  if (tree.kind !== 'map') return { entry: readEntry(form.value, tree, spot, report), at: null };
  const at = tree.entries.find(({ key }) => key === 'at');
  const rest = { ...tree, entries: tree.entries.filter((entry) => entry !== at) };
  const entry = readEntry(form.value, rest, spot, report, ['at']);
  const atSpot = under(spot, 'at');
  return { entry, at: at === undefined ? null : readForm(form.at, at.value, atSpot, report) };
}

function readCount(form: CountForm, tree: Tree, spot: Spot, report: Report): number {
  const written = tree.kind === 'text' && /^\d{1,9}$/u.test(tree.text) ? Number(tree.text) : Number.NaN;
  if (written >= form.lowest && written <= form.highest) return written;
  const mend = `Write a whole number from ${form.lowest} to ${form.highest}.`;
  report.refuse(spot.path, `${describe(tree)} is not a count that is possible here`, mend);
  return form.lowest;
}

function knownWord<W extends string>({ words, aliases }: WordForm<W>, text: string): W | null {
  return (
    words.find((word) => word === text) ?? (Object.hasOwn(aliases, text) ? (aliases[text] ?? null) : null)
  );
}

function readWord(form: WordForm<string>, tree: Tree, spot: Spot, report: Report, part?: string): string {
  const word = tree.kind === 'text' ? knownWord(form, tree.text) : null;
  if (word !== null) return word;
  const spellings = [...form.words, ...Object.keys(form.aliases)];
  const meant = tree.kind === 'text' ? nearestWord(tree.text, spellings) : null;
  const choices = [
    ...form.words.map((choice) => `\`${choice}\``),
    ...(part === undefined ? [] : [`\`${part}\``]),
  ];
  const mend = meant === null ? `Write ${choiceOf(choices)}.` : `Write \`${meant}\`.`;
  report.refuse(spot.path, `${describe(tree)} is not among the words for this key`, mend);
  return form.words[0] ?? '';
}

function readName(tree: Tree, spot: Spot, report: Report): string {
  if (tree.kind !== 'text' || tree.text.trim() === '') {
    report.refuse(spot.path, `${describe(tree)} stands where a name belongs`, 'Write a few words.');
    return '';
  }
  if (tree.text.length > longestName) {
    const what = `the name has ${tree.text.length} characters`;
    report.refuse(spot.path, what, `Write at most ${longestName}.`);
    return '';
  }
  if (!isPrintable(tree.text)) {
    const what = `the name ${shown(tree.text)} contains characters that cannot be printed`;
    report.refuse(spot.path, what, 'Write it on one line, with letters, figures and usual signs.');
    return '';
  }
  return tree.text;
}

function readList(form: ListForm<Form>, tree: Tree, spot: Spot, report: Report): unknown {
  if (tree.kind !== 'list') {
    const mend = `Write a list, such as \`${exampleOf(form)}\`, or leave the key out.`;
    report.refuse(spot.path, `${describe(tree)} stands where a list belongs`, mend);
    return [];
  }
  if (tree.items.length > longestList) {
    report.refuse(spot.path, `the list has ${tree.items.length} items`, `Write at most ${longestList}.`);
    return [];
  }
  let pieces = 0;
  return tree.items.flatMap((item, index) => {
    if (pieces > 0) {
      pieces -= 1;
      return [];
    }
    const place = itemSpot(spot, form.itemKey, index + 1);
    pieces = refuseCutItem(item, tree.items.slice(index + 1), place, report);
    return pieces > 0 ? [] : [readAny(form.item, item, place, report)];
  });
}

/** `[ space: 8,5 mm ]`: refuses an item whose number commas have cut, and says how many of those behind it are pieces of it. */
function refuseCutItem(item: Tree, behind: readonly Tree[], spot: Spot, report: Report): number {
  const last = item.kind === 'map' ? item.entries.at(-1) : undefined;
  if (last === undefined) return 0;
  const end = behind.findIndex(({ kind }) => kind !== 'text');
  const texts = (end < 0 ? behind : behind.slice(0, end)).map((one) => (one.kind === 'text' ? one.text : ''));
  const cut = cutByComma(last.value, texts);
  if (cut === null) return 0;
  refuseCut(cut, last.value, under(spot, last.key).path, report);
  return cut.pieces;
}

/** The thing as written, or its kind: for the beginning of a refusal. */
export function describe(tree: Tree): string {
  switch (tree.kind) {
    case 'text':
      return shown(tree.text);
    case 'map':
      return 'a group of keys';
    case 'list':
      return 'a list';
    case 'nothing':
      return 'an empty place';
  }
}
