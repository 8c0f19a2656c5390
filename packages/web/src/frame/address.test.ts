import { expect, test } from 'vitest';
import { type Page, pageAt, pathOf } from './address.ts';

const id = '0b5c1a52-5d0e-4f0c-9a59-1f1d2f7e8a10';
const pages: readonly Page[] = [
  { page: 'start' },
  { page: 'new' },
  { page: 'launch', id },
  { page: 'versions', id },
  { page: 'steer', id },
  { page: 'drawer' },
  { page: 'part-versions', id },
  { page: 'gauges' },
  { page: 'gauge', gauge: 'knife-edge', about: null },
  { page: 'gauge', gauge: 'knife-edge', about: { kind: 'launch', id } },
  { page: 'gauge', gauge: 'caustic', about: { kind: 'reading', id } },
  { page: 'match' },
  { page: 'instruments' },
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

test('an unfolded part stands behind the path of the drawer', () => {
  expect(pathOf({ page: 'drawer', part: id })).toBe(`/drawer#${id}`);
});

test('the key that a gauge is to fill stands behind the path', () => {
  expect(
    pathOf({ page: 'gauge', gauge: 'ruler', about: { kind: 'launch', id }, fills: 'path.1.space' }),
  ).toBe(`/gauge/ruler/launch/${id}#path.1.space`);
});
