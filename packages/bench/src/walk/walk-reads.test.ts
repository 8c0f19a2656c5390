import { expect, test } from 'vitest';
import type { WalkAct, WalkReads } from './walk-act.ts';
import { meterCounting, sessionOf } from './walk-reads.ts';

const typed: WalkReads = { instrument: null, meter: 'typed', floor: null, goesOn: false };
const diode: WalkReads = { instrument: 'diode', meter: 'voltage', floor: 0.002, goesOn: true };
const other: WalkReads = { ...diode, instrument: 'other' };
const did = (standing: number): WalkAct => ({ do: 'answer', answer: { outcome: 'did', standing } });
const reads = (by: WalkReads, anew = false): WalkAct => ({ do: 'reads', reads: by, anew });
const readings = (begun: WalkReads, acts: readonly WalkAct[]) =>
  sessionOf({ procedure: 'ridge', reads: begun }, acts).answers.map((answer) =>
    answer.outcome === 'did' ? answer.standing : null,
  );

test('an undo takes back the last answer that counts, and with nothing before it nothing', () => {
  expect(readings(typed, [did(1), did(2), { do: 'undo' }, did(3)])).toEqual([1, 3]);
  expect(readings(typed, [{ do: 'undo' }, did(1)])).toEqual([1]);
  expect(
    sessionOf({ procedure: 'ridge', reads: typed }, [did(1), { do: 'undo' }, did(3)]).answeredBy,
  ).toEqual([2]);
});

test('typing for an instrument and back to it goes on; another one, or another unit, begins anew', () => {
  const typing = { ...typed, meter: 'voltage' } as const;
  expect(readings(diode, [did(1), reads(typing), did(2), reads(diode), did(3)])).toEqual([1, 2, 3]);
  expect(readings(diode, [did(1), reads(other), did(2)])).toEqual([2]);
  expect(readings(diode, [did(1), reads(typing), reads(other), did(2)])).toEqual([2]);
  expect(readings(typed, [did(1), reads(diode), did(2)])).toEqual([2]);
  expect(readings(diode, [did(1), reads(diode, true), did(2)])).toEqual([2]);
  // only listened to anew
  expect(readings(diode, [did(1), reads({ ...diode, goesOn: false }), did(2)])).toEqual([1, 2]);
});

test('the floor is that of what the walk was begun with, and an eye walks as it is taught', () => {
  const session = sessionOf({ procedure: 'ridge', reads: diode }, [
    did(1),
    reads({ ...diode, floor: 0.5, goesOn: false }),
  ]);
  expect(session).toMatchObject({
    floor: 0.002,
    meter: 'voltage',
    procedure: 'ridge',
    reads: { goesOn: false },
  });
  const anew = sessionOf({ procedure: 'ridge', reads: diode }, [
    did(1),
    reads({ ...diode, floor: 0.5 }, true),
  ]);
  expect(anew.floor).toBe(0.5);
  const eye = sessionOf({ procedure: 'ridge', reads: diode }, [reads({ ...typed, meter: 'eye' })]);
  expect(eye.procedure).toBe('taught');
});

test('an eye’s steps are no measure, and every other unit is one', () => {
  expect(meterCounting('step')).toBeNull();
  expect(meterCounting('W')).toBe('power');
  expect(meterCounting('A')).toBe('current');
});
