import { expect, test } from 'vitest';
import { Refusal } from '../refusal.ts';
import { readQuantity } from '../units/read-quantity.ts';
import { assign, settingExample, wordOf } from './assign.ts';
import { gauges } from './gauge-table.ts';
import { inShell, setTo, setToWithin } from './setting-words.ts';

test('a page is told of a field, a shell of what to type', () => {
  expect(setTo('pixel', '5.2 µm')).toBe('Set `pixel` to `5.2 µm`');
  expect(inShell(`${setTo('pixel', '5.2 µm')}, the width of one.`)).toBe(
    'Add --set "pixel=5.2 µm", the width of one.',
  );
  expect(inShell(`From behind the card ${setToWithin('looking', 'upstream')}.`)).toBe(
    'From behind the card add --set "looking=upstream".',
  );
  expect(inShell('Write a length, such as `6.2 mm`.')).toBe('Write a length, such as `6.2 mm`.');
});

const needy = gauges.filter(({ settings }) => settings.some(({ needed }) => needed));

test.each(needy.map((gauge) => [gauge.name, gauge] as const))(
  '%s asks for what is missing without a word of the shell, and the mend works to the letter',
  (_, gauge) => {
    const columns = gauge.columns
      .filter(({ needed }) => needed)
      .map(({ name }) => ({ heading: { name, unit: '' }, values: [1] }));
    const ask = (settings: readonly { name: string; text: string }[]) => {
      try {
        assign(gauge, { where: 'a', columns, settings: settings.map((one) => ({ ...one, where: 'a' })) });
        return [];
      } catch (error) {
        if (error instanceof Refusal) return error.parts.filter(({ what }) => what.includes('is missing'));
        throw error;
      }
    };
    const missing = ask([]);
    expect(missing.length).toBeGreaterThan(0);
    const done = missing.map(({ mend }) => {
      expect(mend).not.toMatch(/--|command|shell/u);
      const [, name = '', text = ''] = /^Set `([^`]+)` to `([^`]+)`/u.exec(mend) ?? [];
      return { name, text };
    });
    expect(ask(done)).toEqual([]);
  },
);

for (const gauge of gauges)
  for (const spec of gauge.settings) {
    if (spec.dimension === 'text' || spec.dimension === 'word') continue;
    const { dimension } = spec;
    test(`the example of ${gauge.name}, ${spec.name}, can be read as it stands`, () => {
      expect(readQuantity(settingExample(spec), dimension).ok).toBe(true);
    });
  }

test('a word of a gauge is known however it is spelt', () => {
  const level = gauges
    .find(({ name }) => name === 'far-field-cone')!
    .settings.find(({ name }) => name === 'level')!;
  if (level.dimension !== 'word') throw new Error('no words');
  expect(wordOf(level, '5 %')).toBe('5%');
  expect(wordOf(level, 'a third')).toBeUndefined();
});
