import type { Entry } from '../quantity/quantity.ts';
import type { Dimension } from '../units/dimension.ts';
import { readQuantity } from '../units/read-quantity.ts';
import type { Launch } from './launch.ts';

/**
 * A launch with another value at one key, for the time a hand holds it; its doubt stays what it was, in its unit. What no
 * entry is known by changes nothing.
 *
 * @param value SI
 */
export function launchWith(launch: Launch, key: string, value: number): Launch {
  return replaced(launch, key, value) as Launch;
}

function replaced(node: unknown, key: string, value: number): unknown {
  if (node === null || typeof node !== 'object') return node;
  if (isEntry(node)) return node.key === key ? { ...node, value } : node;
  if (Array.isArray(node)) {
    const changed = node.map((child) => replaced(child, key, value));
    return changed.some((child, i) => child !== node[i]) ? changed : node;
  }
  const before = node as Readonly<Record<string, unknown>>;
  let after = before;
  for (const name in before) {
    const child = replaced(before[name], key, value);
    if (child !== before[name]) after = { ...after, [name]: child };
  }
  return after;
}

const isEntry = (node: object): node is Entry => 'key' in node && 'uncertainty' in node && 'value' in node;

/** A written quantity after a hand has moved it. */
export interface Moved {
  readonly text: string;
  /** SI. */
  readonly value: number;
}

/**
 * A quantity's text with its number moved by a factor, unit and uncertainty as they are written: `6.2 mm ± 2 %` times 1.1
 * is `6.82 mm ± 2 %`. Three figures, four from 1000 on; null where the text begins with no plain number or is moved out of
 * what can be read.
 */
export function movedByFactor(text: string, dimension: Dimension, factor: number): Moved | null {
  return moved(text, dimension, (number) => number * factor);
}

/** The same, moved by an amount in the unit it is written in. */
export function movedByAmount(text: string, dimension: Dimension, amount: number): Moved | null {
  return moved(text, dimension, (number) => number + amount);
}

function moved(text: string, dimension: Dimension, move: (number: number) => number): Moved | null {
  const [, number, rest] = /^\s*([-−+]?\d+(?:\.\d+)?(?:e[-+]?\d+)?)(\s*\p{L}.*)$/iu.exec(text) ?? [];
  if (number === undefined || rest === undefined) return null;
  const to = move(Number(number.replace('−', '-')));
  if (!Number.isFinite(to)) return null;
  const written = String(Number(to.toPrecision(Math.abs(to) >= 1000 ? 4 : 3)));
  if (written.includes('e')) return null;
  const changed = `${written}${rest}`;
  const read = readQuantity(changed, dimension);
  return read.ok ? { text: changed, value: read.value } : null;
}
