import { expect, test } from 'vitest';
import { type Page, pageAt, pathOf } from './address.ts';

const id = '0b5c1a52-5d0e-4f0c-9a59-1f1d2f7e8a10';
const pages: readonly Page[] = [
  { page: 'start' },
  { page: 'new' },
  { page: 'launch', id },
  { page: 'versions', id },
  { page: 'drawer' },
  { page: 'match' },
  { page: 'book' },
  { page: 'pair' },
  { page: 'unknown', path: '/launch/1' },
  { page: 'unknown', path: '/constructor' },
];

for (const page of pages) {
  test(`${pathOf(page)} is the address of ${page.page}`, () => {
    expect(pageAt(pathOf(page))).toEqual(page);
  });
}

test('a slash too many leads to the same page', () => {
  expect(pageAt('/drawer/')).toEqual({ page: 'drawer' });
});
