import { expect, test } from 'vitest';
import { fuzzDocuments } from '../scripts/fuzz/documents.fuzz.ts';

// Invariants, no expected values: see scripts/fuzz/documents.fuzz.ts. `npm run fuzz` does a hundred thousand.
test('three thousand broken documents are read or refused, and what is read survives being written', () => {
  const { read, refused } = fuzzDocuments(3000, 20_261_202);
  expect(read + refused).toBe(3000);
  // Both ways must have been tried: about one in seven is still a document.
  expect(read).toBeGreaterThan(200);
}, 120_000);
