import { expect, expectTypeOf, test } from 'vitest';
import {
  type AnswerOf,
  addressOf,
  documentText,
  type KeptLaunch,
  liveMessage,
  type ParametersOf,
  type RequestOf,
  type Routes,
  refusalCodes,
  routes,
  writeEntry,
  writeLaunch,
  z,
} from './index.ts';

const id = '7b3f6f0e-4a51-4c1c-9a86-0d3a8a9d2f11';

test('no two routes answer the same question', () => {
  const asked = Object.values(routes).map(({ method, path }) => `${method} ${path}`);
  expect(new Set(asked).size).toBe(asked.length);
});

test('an address has its parameters filled in, escaped', () => {
  expect(addressOf(routes.launchVersion, { id, version: '3' })).toBe(`/api/launches/${id}/versions/3`);
  expect(addressOf(routes.launch, { id: '../../x?y' })).toBe('/api/launches/..%2F..%2Fx%3Fy');
  expect(addressOf(routes.entries, {}, { launch: id, kind: 'a b&c', before: undefined })).toBe(
    `/api/entries?launch=${id}&kind=a%20b%26c`,
  );
});

test('both sides take their types from the table', () => {
  expectTypeOf<AnswerOf<Routes['launch']>>().toEqualTypeOf<KeptLaunch>();
  expectTypeOf<RequestOf<Routes['writeEntry']>['data']>().toEqualTypeOf<z.infer<ReturnType<typeof z.json>>>();
  expectTypeOf<RequestOf<Routes['launches']>>().toEqualTypeOf<null>();
  expectTypeOf<ParametersOf<Routes['launchVersion']>>().toEqualTypeOf<{
    readonly id: string;
    readonly version: string;
  }>();
});

test('a key that nobody asked for is refused, not dropped', () => {
  const write = { write: id, base: 0, text: 'coreward: 1', putAway: false, invented: false };
  expect(writeLaunch.safeParse(write).success).toBe(true);
  expect(writeLaunch.safeParse({ ...write, owner: 'me' }).success).toBe(false);
  expect(writeLaunch.safeParse({ ...write, base: -1 }).success).toBe(false);
  expect(writeLaunch.safeParse({ ...write, write: 'again' }).success).toBe(false);
});

test('a text with half a surrogate pair is refused: it cannot be kept as UTF-8', () => {
  expect(documentText.safeParse('whole: \u{1f52d}, µ').success).toBe(true);
  expect(documentText.safeParse('half: \ud83d').success).toBe(false);
});

test('the data of an entry is any JSON and nothing else', () => {
  const entry = { write: id, kind: 'note', launch: null };
  expect(writeEntry.safeParse({ ...entry, data: { text: 'm', list: [1, null, true] } }).success).toBe(true);
  expect(writeEntry.safeParse({ ...entry, data: undefined }).success).toBe(false);
  expect(writeEntry.safeParse({ ...entry, data: Number.NaN }).success).toBe(false);
});

test('every refusal has an HTTP status of its own kind', () => {
  for (const status of Object.values(refusalCodes)) expect(status).toBeGreaterThanOrEqual(400);
  expect(new Set(Object.values(refusalCodes)).size).toBe(Object.keys(refusalCodes).length);
});

test('a live message of an unknown type is refused', () => {
  expect(liveMessage.safeParse({ type: 'beat', sequence: 4 }).success).toBe(true);
  expect(liveMessage.safeParse({ type: 'shout', sequence: 4 }).success).toBe(false);
});

// The page policy forbids making code out of text, and a browser reports even the attempt.
test('no schema is compiled', () => {
  expect(z.config().jitless).toBe(true);
});

test('every schema can be written as JSON Schema', () => {
  for (const { answer, request } of Object.values(routes)) {
    expect(() => z.toJSONSchema(answer)).not.toThrow();
    if (request !== null) expect(() => z.toJSONSchema(request, { io: 'input' })).not.toThrow();
  }
});
