import { describe, expect, test } from 'vitest';
import { OutOfRange } from '../out-of-range.ts';
import { glassNamed, glassNames } from './glass-named.ts';

function refusalOf(name: string): OutOfRange {
  try {
    glassNamed(name);
  } catch (refusal) {
    if (refusal instanceof OutOfRange) return refusal;
  }
  throw new Error(`${name} was not refused`);
}

describe('glasses by name', () => {
  test.each(glassNames)('%s is found, with a source and a range', (name) => {
    const glass = glassNamed(name);
    expect(glass.name).toBe(name);
    expect(glass.source).not.toBe('');
    expect(glass.obtained).toMatch(/^(read in|computed with|from memory)/);
    expect(glass.range[0]).toBeLessThan(glass.range[1]);
  });

  test('no two share a spelling', () => {
    const spellings = glassNames.flatMap((name) => [name, ...glassNamed(name).alsoCalled]);
    const bare = spellings.map((each) => each.toLowerCase().replace(/[^a-z0-9]/g, ''));
    expect(new Set(bare).size).toBe(bare.length);
  });

  test.each([
    ['n-bk7', 'N-BK7'],
    ['N BK7', 'N-BK7'],
    ['nbk7', 'N-BK7'],
    [' Fused  Silica ', 'fused silica'],
    ['fused-silica', 'fused silica'],
    ['SiO2', 'fused silica'],
    ['sapphire (o)', 'sapphire o'],
    ['linbo3 e', 'LiNbO3 e'],
    ['acrylic', 'PMMA'],
  ])('`%s` is %s', (written, name) => expect(glassNamed(written).name).toBe(name));

  test.each([
    ['BK7', 'N-BK7'], // an older melt: asked about, not assumed
    ['SF11', 'N-SF11'],
    ['sapphire', 'sapphire o'],
    ['LiNbO3', 'LiNbO3 e'],
  ])('`%s` is refused, and following the mend to %s works', (written, name) => {
    const { what, mend } = refusalOf(written);
    expect(what).toContain(`\`${written}\``);
    expect(mend).toContain(`\`${name}\``);
    expect(glassNamed(/`([^`]+)`/.exec(mend)![1]!)).toBeDefined();
  });

  test.each(['unobtainium', '', '2', '?'])('`%s` is refused with the whole list', (written) => {
    expect(refusalOf(written).mend).toContain('N-SF11, N-SF6');
  });
});
