import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { fiveLinesLaunch } from '../example/example-texts.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { Refusal } from '../refusal.ts';
import { cautionJson, stepJson } from './caution-json.ts';
import { cautionSections, stepSections } from './caution-sections.ts';
import { cautionsFor } from './cautions.ts';
import { laserKey } from './laser-key.ts';
import { hazardQuestions } from './questions.ts';
import { readAnswers } from './read-answers.ts';
import { shortCautions } from './short-cautions.ts';
import { standingLine } from './standing-line.ts';
import { stepCautions } from './step-cautions.ts';
import { stepNames } from './step-names.ts';
import { stepNamed } from './steps.ts';

const text = readFileSync(
  new URL('../../../../examples/observing-loft.launch.yaml', import.meta.url),
  'utf8',
);
const loft = readLaunch(text, 'loft');
const five = readLaunch(fiveLinesLaunch, 'five');
const bareRed = readLaunch(
  `coreward: 1
laser: { wavelength: 650 nm ± 0 nm, power: 4 mW ± 0 mW, beam: { diameter: 1.1 mm, at: 300 mm } }
collimator: { focal length: 8 mm }
fibre: { type: G.652.D }`,
  'red',
);
const times = (whole: string, part: string) => whole.split(part).length - 1;

describe('steps', () => {
  test('there are eleven, by number or by name', () => {
    expect(stepNames).toHaveLength(11);
    stepNames.forEach((name, i) => {
      expect(stepNamed(`${i}`)).toBe(name);
      expect(stepNamed(name)).toBe(name);
    });
    for (const wrong of ['11', '-1', 'climbing', '', '1.5']) expect(() => stepNamed(wrong)).toThrow(Refusal);
  });

  test('each says what to do, with hazards of the walk and who decides once', () => {
    for (const step of stepNames) {
      const told = stepCautions(loft, step);
      expect(told.orders.length).toBeGreaterThan(1);
      expect(told.hazards.length, step).toBeGreaterThan(0);
      expect(times(JSON.stringify(stepSections(told)), standingLine), step).toBe(1);
      expect(times(JSON.stringify(stepJson(told)), standingLine), step).toBe(1);
      expect(stepJson(told).at(-1)?.kind).toBe('deferral');
    }
  });

  test('before power: every line of light, its class as an estimate, and eyewear for each', () => {
    const said = stepCautions(loft, 'before-power').numbers.join('\n');
    expect(said).toContain('520 nm');
    expect(said).toContain('808 nm, invisible');
    expect(said).toContain('635 nm');
    expect(said).toContain('would be treated like class 3B here');
    // 23 mW through 7 mm against 10 W/m²: log10(23e-3 / 3.848e-4) = 1.8, rounded up (mathematics)
    expect(said).toMatch(/520 nm: optical density 2 or more for 10 s/u);
  });

  // SAF-AL-VIS-1MW and SAF-AL-VIS-2S, both read: 1 mW, better 0.6 mW; log10(8/1) = 0.9 for twice 4 mW
  test('first light: what to align with, and that it is not gone', () => {
    const said = stepCautions(bareRed, 'first-light').numbers.join('\n');
    expect(said).toContain('Align with 1 mW at most, better 0.6 mW');
    expect(said).toContain('optical density of 1 or more');
    expect(said).toMatch(/At 1 mW the beam is above the eye limit at up to \d+ m/u);
    expect(said).toContain('not gone');
  });

  test('a lens at the far end: decimetres become many metres, with a lens of the bench or an example', () => {
    const withLens = stepCautions(loft, 'far-lens').numbers.join();
    expect(withLens).toContain('behind its lens');
    const example = stepCautions(five, 'far-lens');
    expect(example.numbers.join()).toMatch(
      /Bare, .* at up to 0\.\d+ m; behind a lens of 8 mm, as an example, at up to \d\d+ m/u,
    );
    expect(example.hazards.map(({ id }) => id)).toContain('far-end-collimated');
    // the launch itself has none
    expect(cautionsFor(five).hazards.map(({ id }) => id)).not.toContain('far-end-collimated');
  });

  test('raising the power shows everything', () => {
    expect(stepCautions(loft, 'full-power').hazards).toHaveLength(cautionsFor(loft).hazards.length);
  });

  test('a step is to be read again when power, wavelength or ends change, and not otherwise', () => {
    const key = (launch: typeof loft, step: (typeof stepNames)[number] = 'climb') =>
      stepCautions(launch, step).readAgainKey;
    expect(key(loft)).toBe(key(readLaunch(text, 'again')));
    expect(key(loft)).not.toBe(key(loft, 'in-use'));
    const { laser, fibre } = loft;
    expect(key({ ...loft, laser: { ...laser, power: { ...laser.power, value: 13e-3 } } })).not.toBe(
      key(loft),
    );
    expect(
      key({ ...loft, laser: { ...laser, wavelength: { ...laser.wavelength, value: 530e-9 } } }),
    ).not.toBe(key(loft));
    expect(key({ ...loft, fibre: { ...fibre, ends: { in: 'flat', out: 'angled 8°' } } })).not.toBe(key(loft));
    expect(key({ ...loft, output: null })).not.toBe(key(loft));
    expect(key({ ...loft, name: 'another name' })).toBe(key(loft));
  });
});

describe('questions', () => {
  test('are kept under the laser, whatever launch it stands in', () => {
    expect(laserKey(loft)).toBe('green-module');
    expect(laserKey(bareRed)).toBe('laser-650-nm');
    expect(hazardQuestions(loft).map(({ id }) => id)).toContain('green-module:highest-power');
  });

  test('an answer is read by its short or its whole name; others’ answers are left alone', () => {
    expect(readAnswers(loft, { 'highest-power': '30 mW' }).highestPower).toBeCloseTo(30e-3, 12);
    expect(readAnswers(loft, { 'green-module:highest-power': '30 mW' }).highestPower).toBeCloseTo(30e-3, 12);
    expect(readAnswers(loft, { 'blue-diode:highest-power': 'rubbish' }).highestPower).toBeNull();
    // kept for this laser while it had a reference source
    expect(readAnswers(bareRed, { 'laser-650-nm:reference-power': '1 mW' }).referencePower).toBeNull();
  });

  // [id, what was answered]
  const slips = [
    ['highest-power', '30'],
    ['highest-power', '30 mW ± 1 mW'],
    ['highest-power', '0 mW'],
    ['emission', 'often'],
    ['emission', '1 s at 2 Hz'],
    ['emission', '5 s at 0.1 Hz'],
    ['label', '5'],
    ['beam-height', 'perhaps'],
    ['other-light', '635 nm'],
    ['room-length', '6'],
    ['profile', 'nice'],
    ['beem-height', 'yes'],
    ['reference-power-x', 'yes'],
  ] as const;
  for (const [id, answer] of slips) {
    test(`\`${id}=${answer}\` is refused with a mend`, () => {
      try {
        readAnswers(loft, { [id]: answer });
        expect.unreachable();
      } catch (error) {
        expect(error).toBeInstanceOf(Refusal);
        expect((error as Refusal).parts[0]?.mend).toMatch(/^(Answer|Write) /u);
      }
    });
  }

  test('every example that a question gives is an answer that it takes', () => {
    for (const { id, examples } of hazardQuestions(loft)) {
      for (const example of examples)
        expect(() => readAnswers(loft, { [id]: example }), `${id}=${example}`).not.toThrow();
    }
  });

  test('a higher label counts, a lower one does not', () => {
    const classOf = (label: string) =>
      cautionJson(
        cautionsFor(bareRed, { answers: readAnswers(bareRed, { label, 'highest-power': '4 mW' }) }),
      ).find(({ id }) => id === 'class-laser')?.text;
    // 4 mW at 650 nm: SAF-CLASS-650-4MW, read
    expect(classOf('none')).toContain('would be treated like class 3R here');
    expect(classOf('2')).toContain('would be treated like class 3R here');
    expect(classOf('3B')).toContain('would be treated like class 3B here');
  });
});

describe('how cautions are told', () => {
  test('the first lines are the worst, how far, and what to do now', () => {
    const [first] = cautionSections(cautionsFor(bareRed));
    const said = first?.blocks.map((block) => (block.kind === 'text' ? block.text : '')) ?? [];
    expect(said[0]).toMatch(
      /^Worst, severe: Laser exit, 650 nm: above the eye limit at up to \d+ m from the exit\./u,
    );
    expect(said[1]).toMatch(/^Do now: /u);
  });

  test('where nothing is above a limit the first line says no more than that', () => {
    const { laser } = bareRed;
    const dim = { ...bareRed, laser: { ...laser, power: { ...laser.power, value: 1e-6 } } };
    const [first] = cautionSections(cautionsFor(dim));
    const said = first?.blocks.map((block) => (block.kind === 'text' ? block.text : '')) ?? [];
    expect(said[0]).toMatch(
      /^Nothing here comes out above its limit for the time assumed\. To mind first: [A-Z]/u,
    );
    // a step may have no numbers of its own, which is no such thing
    expect(JSON.stringify(stepSections(stepCautions(bareRed, 'pack-up')))).not.toContain('Nothing here');
  });

  test('who decides stands once in text, in data and in the short form, and those without anybody are told', () => {
    for (const launch of [loft, five, bareRed]) {
      const cautions = cautionsFor(launch);
      expect(times(JSON.stringify(cautionSections(cautions)), standingLine)).toBe(1);
      expect(times(JSON.stringify(cautionJson(cautions)), standingLine)).toBe(1);
      expect(times(JSON.stringify(shortCautions(launch)), standingLine)).toBe(1);
      expect(JSON.stringify(cautionSections(cautions))).toContain('No one appointed?');
    }
    const officer = cautionsFor(loft, { answers: readAnswers(loft, { officer: 'yes' }) });
    expect(JSON.stringify(cautionSections(officer))).not.toContain('No one appointed?');
  });

  test('every number carries set, time, wavelength, what beam definition, and that it is an estimate', () => {
    for (const { id, unit, limitSet, fine, wavelength, hazardDistance } of cautionsFor(loft).hazards) {
      if (unit === null) continue;
      expect(fine, id).toMatch(/^\(Estimate: /u);
      if (wavelength !== null) expect(fine, id).toMatch(/\d+(\.\d+)? nm/u);
      if (limitSet !== null) expect(fine, id).toMatch(/(EU 2006|ICNIRP 2013).* for \d+(\.\d+)? s/u);
      if (hazardDistance !== null && hazardDistance > 0)
        expect(fine, id).toMatch(/beam at (1\/e|1\/e²|5 %)|matt surface/u);
    }
  });

  test('every hazard carries what it rests on, and something to do', () => {
    for (const { id, basis, doNow, atRisk } of cautionsFor(loft).hazards) {
      expect(basis.length, id).toBeGreaterThan(0);
      expect(doNow, id).toMatch(/^[A-Z].*\.$/u);
      expect(atRisk.length, id).toBeGreaterThan(0);
    }
  });

  test('the short form names unseen light, the far end, the source, and what is left out', () => {
    const short = shortCautions(loft);
    expect(short.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['laser-exit', 'reference-receives', 'more-cautions', 'who-decides']),
    );
    expect(short.some(({ text: said }) => said.includes('invisible'))).toBe(true);
    // one for each kind of hazard, what is left out, and who decides
    expect(short.length).toBeLessThanOrEqual(12);
  });

  test('JSON has every key that was promised, and survives being copied', () => {
    const entries = cautionJson(cautionsFor(loft));
    for (const entry of entries) {
      for (const key of [
        'id',
        'point',
        'quantity',
        'value',
        'unit',
        'limit',
        'limitSet',
        'duration_s',
        'hazardDistance_m',
        'text',
      ]) {
        expect(entry, `${entry.id} ${key}`).toHaveProperty(key);
      }
    }
    expect(JSON.parse(JSON.stringify(entries))).toEqual(structuredClone(entries));
    expect(new Set(entries.map(({ id }) => id)).size).toBe(entries.length);
    // a walk is plain data once copied, to be handed to a worker or a page
    expect(structuredClone(cautionsFor(loft).hazards)).toHaveLength(cautionsFor(loft).hazards.length);
  });
});
