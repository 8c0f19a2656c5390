import { parseArgs } from 'node:util';
import { Refusal } from '@coreward/bench';
import { lawNames } from './drawn-benches.ts';
import { policies } from './policies.ts';

/** What is to be walked, and how it is to be told. */
export interface Request {
  readonly benches: readonly string[];
  readonly drawn: readonly string[];
  readonly policies: readonly string[];
  /** First and last seed; null: all of a file, the usual ones of a law. */
  readonly seeds: readonly [number, number] | null;
  readonly stream: number;
  readonly json: boolean;
  readonly writeDocs: boolean;
}

const options = {
  benches: { type: 'string', multiple: true },
  drawn: { type: 'string', multiple: true },
  policy: { type: 'string', multiple: true },
  seeds: { type: 'string' },
  noise: { type: 'string' },
  json: { type: 'boolean' },
  'write-docs': { type: 'boolean' },
} as const;

/** @throws {Refusal} with everything that cannot be done, at once */
export function requestOf(args: readonly string[]): Request {
  const { values } = parsed(args);
  const unknown = [
    ...strangers('--policy', values.policy, Object.keys(policies)),
    ...strangers('--drawn', values.drawn, lawNames),
  ];
  if (unknown.length > 0) throw new Refusal(unknown);
  return {
    benches: values.benches ?? [],
    drawn: values.drawn ?? [],
    policies: values.policy ?? usualPolicies,
    seeds: values.seeds === undefined ? null : seedsOf(values.seeds),
    stream: values.noise === undefined ? 0 : streamOf(values.noise),
    json: values.json === true,
    writeDocs: values['write-docs'] === true,
  };
}

/** Walked where none is named: our own, and the two it is held against. */
export const usualPolicies = ['ridge', 'walk_hold1', 'walk_hold'] as const;

function parsed(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: false });
  } catch (error) {
    throw new Refusal({
      where: 'bench:walk',
      what: (error as Error).message.replace(/\. .*$/su, ''),
      mend: `Write options only, of ${Object.keys(options)
        .map((name) => `--${name}`)
        .join(', ')}.`,
    });
  }
}

const strangers = (where: string, asked: readonly string[] | undefined, names: readonly string[]) =>
  (asked ?? [])
    .filter((name) => !names.includes(name))
    .map((name) => ({ where, what: `there is no \`${name}\``, mend: `Write one of ${names.join(', ')}.` }));

/** So many benches are walked at most: more is a slip of the finger. */
const mostBenches = 100_000;

function seedsOf(text: string): readonly [number, number] {
  const read = /^(\d{1,9})-(\d{1,9})$/.exec(text);
  const [from, to] = [Number(read?.[1]), Number(read?.[2])];
  if (read !== null && from <= to && to - from < mostBenches) return [from, to];
  throw new Refusal({
    where: '--seeds',
    what: `\`${text}\` is no range of seeds`,
    mend: 'Write two whole numbers, the lower first, such as `0-199`.',
  });
}

function streamOf(text: string): number {
  if (/^\d{1,4}$/.test(text)) return Number(text);
  throw new Refusal({
    where: '--noise',
    what: `\`${text}\` is no stream of noise`,
    mend: 'Write a whole number, such as `1`.',
  });
}
