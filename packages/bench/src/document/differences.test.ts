import { expect, test } from 'vitest';
import { observingLoftLaunch } from '../example/example-texts.ts';
import { differences } from './differences.ts';
import { setInText } from './set-in-text.ts';

test('a document does not differ from itself, nor from itself without comments', () => {
  const bare = observingLoftLaunch.replace(/^#.*\n/gmu, '');
  expect(bare).not.toBe(observingLoftLaunch);
  expect(differences(observingLoftLaunch, bare)).toEqual([]);
});

test('what was changed, added and left out is told place by place', () => {
  let text = setInText(observingLoftLaunch, ['collimator', 'focal length', 'value'], '7 mm');
  text = setInText(text, ['laser', 'beam', 'quality'], { value: '1.15', origin: 'measured' });
  text = setInText(text, ['reference', 'tolerates'], null);
  expect(differences(observingLoftLaunch, text)).toEqual([
    { place: 'laser.beam.quality.origin', before: null, after: 'measured' },
    { place: 'collimator.focal length', before: '6.2 mm', after: '7 mm' },
    { place: 'reference.tolerates', before: '1 mW', after: null },
  ]);
});
