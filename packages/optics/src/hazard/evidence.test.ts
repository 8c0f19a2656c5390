import { expect, test } from 'vitest';
import { type Basis, evidenceMarks, hazardEvidences, joinBases, weakestEvidence } from './evidence.ts';
import { frontRows } from './front-rows.ts';
import { limitSets } from './limit-set.ts';
import { retinaRows } from './retina-rows.ts';
import { corneaRows, skinRows } from './skin-rows.ts';

const basis = (evidence: Basis['evidence'], source = evidence as string): Basis => ({ evidence, source });

test('a result is as sure as the weakest thing it rests on, and nothing is the weakest of all', () => {
  expect(weakestEvidence([basis('mathematics'), basis('read')])).toBe('read');
  expect(weakestEvidence([basis('read'), basis('from memory'), basis('mathematics')])).toBe('from memory');
  expect(weakestEvidence([basis('proposal'), basis('read')])).toBe('proposal');
  expect(weakestEvidence([])).toBe('proposal');
});

test('each source is named once, in order', () => {
  const [a, b] = [basis('read', 'a'), basis('from memory', 'b')];
  expect(joinBases([a, b], [a], [{ ...b, evidence: 'read' }])).toEqual([a, b, { ...b, evidence: 'read' }]);
});

test('every kind of evidence has its own letter', () => {
  expect(hazardEvidences.map((one) => evidenceMarks[one])).toEqual(['G', 'R', 'M', 'P']);
});

test('the tables rest on what was read and what was remembered, as their heads say', () => {
  for (const set of limitSets) {
    const rows = [...retinaRows(set, 0.01), ...frontRows[set], ...skinRows[set]];
    for (const { basis, time } of rows) {
      const remembered = set === 'icnirp2013' || (time.from >= 10 && !basis.source.includes('2.4'));
      expect(basis.evidence, `${set} ${basis.source}`).toBe(remembered ? 'from memory' : 'read');
    }
  }
  expect(corneaRows.every(({ basis }) => basis.evidence === 'from memory')).toBe(true);
});
