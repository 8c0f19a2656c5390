import { describe, expect, test } from 'vitest';
import { asWritten, hazardOf, walked } from './invented-benches.ts';
import { lineSummaries } from './summary.ts';
import { alignmentText } from './summary-texts.ts';

describe('what is not known counts as the worse, and says so', () => {
  test('the highest power: twice the stated, and in words', () => {
    const open = hazardOf(walked({}), 'laser-exit');
    expect(open.power).toBeCloseTo(10e-3, 12);
    expect(open.assumed.join()).toContain('twice the rated power is assumed, and the result may be too mild');
    const known = hazardOf(walked({}, { 'highest-power': '6 mW' }), 'laser-exit');
    expect(known.power).toBeCloseTo(6e-3, 12);
    // a low answer does not lower what is stated
    expect(hazardOf(walked({}, { 'highest-power': '1 mW' }), 'laser-exit').power).toBeCloseTo(5e-3, 12);
  });

  // NIST Technical Note 1668 as reported in the news [R]: twice the green, 808 nm; SAF-HIDDEN-IR-808
  test('infrared of a green laser: twice its rating until measured or blocked', () => {
    const green = { wavelength: '532 nm ± 0 nm', power: '10 mW ± 0 mW' };
    const hidden = hazardOf(walked(green), 'laser-exit-infrared');
    expect(hidden.power).toBe(20e-3);
    expect(hidden.wavelength).toBe(808e-9);
    expect(hidden.invisible).toBe(true);
    expect(hidden.what).toContain('invisible');
    expect(hazardOf(walked(green, { infrared: '1 mW' }), 'laser-exit-infrared').power).toBe(1e-3);
    for (const infrared of ['none', 'blocked']) {
      expect(walked(green, { infrared }).hazards.filter(({ id }) => id.includes('infrared'))).toEqual([]);
    }
    // tripled ones leak as well: 355 nm is a third of 1064 nm, pumped at 808 nm (common practice, no source)
    for (const wavelength of ['355 nm ± 0 nm', '577 nm ± 0 nm']) {
      expect(hazardOf(walked({ ...green, wavelength }), 'laser-exit-infrared').power).toBe(20e-3);
    }
    // a red diode is not frequency-doubled, and is not asked about it
    const red = walked({ wavelength: '650 nm ± 0 nm' });
    expect(red.hazards.some(({ id }) => id.includes('infrared'))).toBe(false);
    expect(red.questions.map(({ name }) => name)).not.toContain('infrared');
  });

  // the same leak, sent in from the far end: it comes out of the launch end as the reference light does
  test('infrared of a green reference source: twice its rating until measured or blocked', () => {
    const rest = 'reference: { wavelength: 532 nm ± 0 nm, power: 3 mW ± 0 mW }';
    const open = walked({ rest });
    for (const id of ['back-light-infrared', 'launch-end-infrared', 'reference-exit-infrared']) {
      expect(hazardOf(open, id).power).toBe(6e-3);
      expect(hazardOf(open, id).invisible).toBe(true);
    }
    expect(open.questions.map(({ name }) => name)).toContain('reference-infrared');
    expect(hazardOf(open, 'together-launch-side').power).toBeCloseTo(10e-3 + 6e-3 + 6e-3, 12);
    const measured = walked({ rest }, { 'reference-infrared': '0.5 mW' });
    expect(hazardOf(measured, 'back-light-infrared').power).toBe(0.5e-3);
    const none = walked({ rest }, { 'reference-infrared': 'none' });
    expect(none.hazards.filter(({ id }) => id.includes('infrared'))).toEqual([]);
    // a red diode is not asked about it
    const red = walked({ rest: 'reference: { wavelength: 635 nm, power: 3 mW }' });
    expect(red.questions.map(({ name }) => name)).not.toContain('reference-infrared');
  });

  test('a reference source that bears nobody knows what is unplugged first', () => {
    const rest = 'reference: { wavelength: 635 nm, power: 0.8 mW }';
    const cautions = walked({ rest });
    const receives = hazardOf(cautions, 'reference-receives');
    expect(receives.level).toBe('severe');
    expect(receives.limit).toBeNull();
    expect(receives.doNow).toMatch(/^Unplug it before/u);
    expect(cautions.staysConnected).toEqual({ whateverIsCoupled: null, asCoupledNow: null });
  });

  test('a reference source that bears 1 mW stays connected up to 1 mW over what is coupled', () => {
    const rest = 'reference: { wavelength: 635 nm, power: 0.8 mW, tolerates: 1 mW ± 0 mW }';
    const all = walked({ rest }, { 'highest-power': '5 mW' });
    expect(hazardOf(all, 'reference-receives').value).toBeCloseTo(5e-3, 12);
    expect(hazardOf(all, 'reference-receives').level).toBe('serious');
    const some = walked({ rest }, { 'highest-power': '5 mW' }, { couplingReached: 0.1 });
    expect(hazardOf(some, 'reference-receives').value).toBeCloseTo(0.5e-3, 12);
    expect(some.staysConnected.whateverIsCoupled).toBe(1e-3);
    expect(some.staysConnected.asCoupledNow).toBeCloseTo(10e-3, 12);
    // a doubt about what it bears counts from its lower end: 5 % of ± 0.2 mW, 1 − 1.645 · 0.2
    const doubtful = walked({ rest: rest.replace('± 0 mW', '± 0.2 mW') });
    expect(doubtful.staysConnected.whateverIsCoupled).toBeCloseTo(0.671e-3, 6);
  });

  test('of pulses nobody knows what a reference source bears, whatever it bears of continuous light', () => {
    const rest = 'reference: { wavelength: 635 nm, power: 0.8 mW, tolerates: 1 W ± 0 W }';
    const pulsed = walked({ rest }, { 'highest-power': '5 mW', emission: '10 ns at 20 Hz' });
    const receives = hazardOf(pulsed, 'reference-receives');
    expect(receives).toMatchObject({ level: 'severe', limit: null, timesLimit: null });
    expect(receives.what).toContain('what it bears of pulses is not known');
    expect(receives.what).toContain('on average');
    expect(receives.quantity).toBe('average power back into the source');
    expect(receives.doNow).toMatch(/^Unplug it before/u);
    expect(pulsed.staysConnected).toEqual({ whateverIsCoupled: null, asCoupledNow: null });
    const steady = walked({ rest }, { 'highest-power': '5 mW' });
    expect(hazardOf(steady, 'reference-receives').level).not.toBe('severe');
  });

  test('hidden infrared and other light take their part of what the reference source bears', () => {
    const rest = 'reference: { wavelength: 635 nm, power: 0.8 mW, tolerates: 1 mW ± 0 mW }';
    const green = { wavelength: '532 nm ± 0 nm', power: '5 mW ± 0 mW', rest };
    // infrared of twice 5 mW beside 10 mW: half of what is borne is left for the green
    expect(walked(green).staysConnected.whateverIsCoupled).toBeCloseTo(0.5e-3, 12);
    const pilot = walked(green, { infrared: 'none', 'other-light': '650 nm at 0.4 mW' });
    expect(pilot.staysConnected.whateverIsCoupled).toBeCloseTo(0.6e-3, 12);
    expect(walked(green, { 'other-light': '650 nm at 2 mW' }).staysConnected.whateverIsCoupled).toBe(0);
    expect(hazardOf(pilot, 'reference-receives').value).toBeCloseTo(10.4e-3, 12);
  });

  test('a source that little reaches now, and much may, is never under its limit', () => {
    const rest = 'reference: { wavelength: 635 nm, power: 0.8 mW, tolerates: 1 mW ± 0 mW }';
    for (const couplingReached of [0, 0.01]) {
      expect(hazardOf(walked({ rest }, {}, { couplingReached }), 'reference-receives').level).toBe('serious');
    }
    const dim = walked({ rest, power: '0.1 mW ± 0 mW' }, { 'highest-power': '0.1 mW' });
    expect(hazardOf(dim, 'reference-receives').level).toBe('under the limit');
  });

  test('blue light that is under its limit for 10 s and above it for 100 s is above it', () => {
    // photochemistry: 100 C_B J/m² from 10 to 100 s, BGI 832, table 1, read: 10 W/m² for 10 s, 1 W/m² for 100 s at 405 nm
    const area = (Math.PI / 4) * 7e-3 ** 2;
    const blue = { wavelength: '405 nm ± 0 nm', power: '0.1 mW ± 0 mW' };
    const cautions = walked(blue, asWritten('0.1 mW'));
    const exit = hazardOf(cautions, 'laser-exit');
    expect(exit.timesLimit).toBeCloseTo(0.1e-3 / area / 10, 9);
    expect(exit.hazardDistance).toBe(0);
    expect(exit.level).toBe('serious');
    expect(exit.what).toContain('under the limit assumed for 10 s. For 100 s it is above it at up to');
    const magnified = hazardOf(cautions, 'far-end-magnified');
    expect(magnified.level).toBe('serious');
    // 0.1 mW over 38.5 µW is 2.6 times
    expect(magnified.what).toContain('For 100 s it is 2.6 times the limit');
    // a red beam is allowed as much for 100 s as for 10 s
    const red = hazardOf(walked({ power: '0.3 mW ± 0 mW' }, asWritten('0.3 mW')), 'laser-exit');
    expect(red.level).toBe('under the limit');
    expect(red.what).not.toContain('100 s');
  });

  test('a sum stands first where it is more than any one line', () => {
    const ids = (answers: Record<string, string>) => walked({}, answers).hazards.map(({ id }) => id);
    expect(ids({ 'other-light': '650 nm at 5 mW' })[0]).toBe('together-launch-side');
    const dim = { ...asWritten('5 mW'), 'highest-power': '5 mW' };
    const both = walked(
      { power: '0.3 mW ± 0 mW' },
      { ...dim, 'highest-power': '0.3 mW', 'other-light': '650 nm at 0.3 mW' },
    );
    expect(both.hazards[0]?.id).toMatch(/^together-/u);
  });

  test('pulses are never aligned with by their average', () => {
    const summary = lineSummaries(walked({}, { emission: '10 ns at 20 Hz' }).walk)[0];
    expect(summary?.alignment).toBeNull();
    expect(summary?.treatedLike).toBeNull();
    expect(alignmentText(null)).toContain('pilot');
  });

  test('other light in the path is walked like the laser’s', () => {
    const cautions = walked({}, { 'other-light': '1064 nm at 1 W' });
    for (const id of [
      'laser-exit',
      'lens-focus',
      'facet-reflection',
      'far-end',
      'far-end-magnified',
      'fibre-break',
    ]) {
      expect(hazardOf(cautions, `${id}-other`).level, id).toBe('severe');
      expect(hazardOf(cautions, `${id}-other`).invisible).toBe(true);
    }
    expect(hazardOf(cautions, 'ferrule-load').level).toBe('serious');
    expect(hazardOf(cautions, 'skin-beam').level).toBe('severe');
  });

  test('light outside the tables is not evaluated, stands first, and is treated as the worst', () => {
    for (const wavelength of ['266 nm', '300 nm']) {
      const cautions = walked({
        wavelength,
        collimator: '{ focal length: 8 mm, focal shift: 0, surfaces: { count: 2, coating: 1 % } }',
        fibre:
          '{ profile: step, core diameter: 4 µm, numerical aperture: 0.12, length: 2 m, attenuation: 100 dB/km }',
      });
      expect(cautions.hazards[0]?.level).toBe('not evaluated');
      expect(cautions.hazards[0]?.doNow).toMatch(/^Treat it like class 4/u);
      expect(hazardOf(cautions, 'far-end').level).toBe('not evaluated');
    }
  });

  test('a wavelength that may be ultraviolet takes the lower limit, and one that may not be seen is called invisible', () => {
    const violet = hazardOf(walked({ wavelength: '402 nm ± 3 nm' }), 'laser-exit');
    expect(violet.exposureTime).toBe(3e4);
    expect(violet.assumed.join()).toContain('its wavelength is doubtful');
    expect(hazardOf(walked({ wavelength: '699 nm ± 3 nm' }), 'laser-exit').what).toContain('invisible');
    expect(hazardOf(walked({ wavelength: '650 nm ± 3 nm' }), 'laser-exit').what).not.toContain('invisible');
  });

  test('pulses are judged as a train where they are told', () => {
    const train = hazardOf(
      walked(
        { wavelength: '1064 nm ± 0 nm', power: '1 mW ± 0 mW' },
        { emission: '10 ns at 20 Hz', 'highest-power': '1 mW' },
      ),
      'laser-exit',
    );
    // SAF-TRAIN-1064-20HZ-EU [R]: 0.013296 J/m² a pulse for 10 s; here for 100 s N is 2000, so 0.05·2000^−0.25, times 20 Hz
    expect(train.limit).toBeCloseTo(0.05 * 2000 ** -0.25 * 20, 6);
    expect(train.limitSet).toBe('eu2006');
    expect(train.level).toBe('severe');
  });

  test('light that is not seen is named, asked about, and never rests on a blink', () => {
    const cautions = walked({ wavelength: '785 nm ± 0 nm' });
    const exit = hazardOf(cautions, 'laser-exit');
    expect(exit.exposureTime).toBe(100);
    expect(exit.otherTimes).toEqual([]);
    expect(hazardOf(cautions, 'invisible-light').what).toMatch(/^Invisible light, 785 nm/u);
    expect(cautions.questions.map(({ name }) => name)).toContain('viewer');
    // of the reference source, too
    const rest = 'reference: { wavelength: 1310 nm ± 1 nm, power: 1 mW }';
    expect(hazardOf(walked({ rest }), 'invisible-light').what).toMatch(/^Invisible light, 1310 nm/u);
    expect(walked({ rest }).questions.map(({ name }) => name)).toContain('viewer');
    expect(walked({}).questions.map(({ name }) => name)).not.toContain('viewer');
    const tried = walked({ wavelength: '785 nm ± 0 nm' }, { viewer: 'yes' });
    expect(tried.hazards.some(({ id }) => id === 'invisible-light')).toBe(false);
  });
});
