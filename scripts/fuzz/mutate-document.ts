import type { Chance } from './chance.ts';

/** Values that readers trip over: absent, wrong type, wrong unit, huge, tiny, odd characters, YAML's own marks. */
const oddValues = [
  '',
  '~',
  'null',
  'true',
  'none',
  'best',
  '0',
  '-0',
  '1',
  '-1',
  '1e999',
  '-1e308',
  '1e-400',
  '.inf',
  '.nan',
  '0x1F',
  '1_000',
  '9'.repeat(400),
  '520',
  '520 nm',
  '520 nm ± 1 nm',
  '1 mm within 5 %',
  '1 mm ± 900 %',
  '12 mW ± 3 dB',
  '-3 dBm',
  '97 %',
  '101 %',
  '45°',
  '1/4-80',
  '80 tpi',
  '1,5 mm',
  '1.1 mm ± 0.1 mm ± 0.1 mm',
  '{ value: 1 mm }',
  '{ value: 6 mm, at: 600 nm, origin: measured, note: "x" }',
  '{ origin: guessed }',
  '{}',
  '[]',
  '[1, 2]',
  '{ a: 1, a: 2 }',
  '&a [*a]',
  '*a',
  '!!int 5',
  '!x y',
  '<<',
  '|',
  '>-\n  x',
  '"\\u0000"',
  '"\\x1b[31m"',
  "'",
  '"',
  '`',
  '@',
  '%',
  '# x',
  'FC/APC',
  'angled 8°',
  'G.652.D',
  'OM1',
  'N-BK7',
  'constructor',
  '__proto__',
  'toString',
] as const;

const oddCharacters = [
  '\u0000',
  '\u0007',
  '\u001b',
  '\t',
  '\r',
  '\n',
  '\u0085',
  '\u00a0',
  '\u00b5',
  '\u03bc',
  '\u2028',
  '\u202e',
  '\u2212',
  '\ufeff',
  '\ufffd',
  '\ud800',
  '😀',
  '٣',
  '：',
  '[',
  ']',
  '{',
  '}',
  ':',
  ': ',
  ',',
  '- ',
  '? ',
  '&a ',
  '*a ',
  '!',
  '|',
  '#',
  '---\n',
  '...\n',
] as const;

/** A text no longer a document, or just still one: a few random changes of every kind. */
export function mutateDocument(text: string, others: readonly string[], chance: Chance): string {
  let changed = text;
  const changes = chance.next() < 0.6 ? 1 : 2 + chance.below(3);
  for (let i = 0; i < changes; i += 1) changed = mutateOnce(changed, others, chance);
  return changed;
}

function mutateOnce(text: string, others: readonly string[], chance: Chance): string {
  const lines = text.split('\n');
  const at = chance.below(lines.length);
  const line = lines[at] ?? '';
  switch (chance.below(11)) {
    case 0:
      return lines.toSpliced(at, 1).join('\n');
    case 1:
      return lines.toSpliced(at, 0, line).join('\n');
    case 2: {
      const to = chance.below(lines.length);
      return lines
        .with(at, lines[to] ?? '')
        .with(to, line)
        .join('\n');
    }
    case 3:
      return lines.with(at, ' '.repeat(chance.below(12)) + line.trimStart()).join('\n');
    // the value behind a key
    case 4:
    case 5:
      return lines.with(at, line.replace(/: .*$/u, `: ${chance.pick(oddValues)}`)).join('\n');
    // one value inside a line
    case 6:
      return lines.with(at, line.replace(/: [^,:}]*(?=[,}])/u, `: ${chance.pick(oddValues)}`)).join('\n');
    // a letter of a key
    case 7: {
      const letter = chance.below(line.length + 1);
      return lines
        .with(at, line.slice(0, letter) + chance.pick(['x', ' ', '', 'é']) + line.slice(letter + 1))
        .join('\n');
    }
    case 8: {
      const place = chance.below(text.length + 1);
      return text.slice(0, place) + chance.pick(oddCharacters) + text.slice(place);
    }
    case 9: {
      const donor = chance.pick(others).split('\n');
      const from = chance.below(donor.length);
      return lines.toSpliced(at, 0, ...donor.slice(from, from + 1 + chance.below(6))).join('\n');
    }
    default: {
      const from = chance.below(text.length + 1);
      return text.slice(0, from) + text.slice(from + chance.below(40));
    }
  }
}

/** A text that never was a document. */
export function randomText(chance: Chance): string {
  const pieces = [...oddCharacters, ...oddValues, 'laser', 'coreward: 1\n', 'fibre:\n  ', 'path:\n  - '];
  const length = chance.below(60);
  return Array.from({ length }, () =>
    chance.next() < 0.7 ? chance.pick(pieces) : String.fromCodePoint(chance.below(0x110000)),
  ).join(chance.pick(['', ' ', '\n']));
}
