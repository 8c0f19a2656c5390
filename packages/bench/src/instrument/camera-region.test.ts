import { expect, test } from 'vitest';
import {
  draggedRegion,
  type RegionKey,
  regionAfterKey,
  regionAround,
  wholePicture,
} from './camera-region.ts';

const size = { width: 640, height: 480 };

test('a region is what a finger spans, either way round, and never leaves the picture', () => {
  const wanted = { x: 64, y: 48, width: 128, height: 144 };
  expect(draggedRegion({ x: 0.1, y: 0.1 }, { x: 0.3, y: 0.4 }, size)).toEqual(wanted);
  expect(draggedRegion({ x: 0.3, y: 0.4 }, { x: 0.1, y: 0.1 }, size)).toEqual(wanted);
  expect(draggedRegion({ x: -1, y: -1 }, { x: 2, y: 2 }, size)).toEqual(wholePicture(size));
  // a touch without a way spans what can be seen
  expect(draggedRegion({ x: 1, y: 1 }, { x: 1, y: 1 }, size)).toEqual({
    x: 636,
    y: 476,
    width: 4,
    height: 4,
  });
  expect(regionAround(3, 470, 20, size)).toEqual({ x: 0, y: 450, width: 24, height: 30 });
});

test('keys move and size it, there and back, and stop at the edge', () => {
  const region = { x: 100, y: 100, width: 60, height: 40 };
  const pairs: readonly (readonly [RegionKey, RegionKey])[] = [
    ['left', 'right'],
    ['up', 'down'],
    ['wider', 'narrower'],
    ['higher', 'lower'],
  ];
  for (const [there, back] of pairs) {
    const moved = regionAfterKey(region, there, size);
    expect(moved).not.toEqual(region);
    expect(regionAfterKey(moved, back, size)).toEqual(region);
  }
  let at = region;
  for (let i = 0; i < 100; i++) at = regionAfterKey(regionAfterKey(at, 'right', size), 'down', size);
  expect(at).toEqual({ x: 580, y: 440, width: 60, height: 40 });
  for (let i = 0; i < 100; i++) at = regionAfterKey(regionAfterKey(at, 'narrower', size), 'lower', size);
  expect(at.width).toBeGreaterThanOrEqual(4);
  expect(at.height).toBeGreaterThanOrEqual(4);
});
