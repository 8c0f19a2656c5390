import { expect, test } from 'vitest';
import { readLaunch } from '../launch/read-launch.ts';
import { cardsAt, cardsByRuler, steerLayout, usualCards } from './steer-layout.ts';

/** Every length with a doubt of its own, so that none can stand for another. */
const layout = steerLayout(
  readLaunch(
    `coreward: 1
laser: { wavelength: 532 nm, power: 5 mW, beam: { waist diameter: 1 mm } }
path:
  - space: 200 mm ± 2 mm
  - mirror: { name: far, angle: 60°, mount: { lever: 40 mm ± 4 mm, pitch: 0.25 mm } }
  - space: 100 mm ± 3 mm
  - space: 60 mm ± 4 mm
  - mirror: { name: near, angle: 45°, mount: { lever: 50 mm ± 1 mm, pitch: 0.5 mm } }
  - space: 90 mm ± 1 mm
collimator: { focal length: 10 mm, focal shift: 0 }
fibre: { type: G.652.D }
`,
    'layout.yaml',
  ),
);

test('lengths are those of the path from the focal plane, with the doubts of their own stretches in quadrature (JCGM 100, 5.1.2)', () => {
  const { nearMirror, mirrorsApart, behindFarMirror } = layout;
  // 90 mm less the focal length; 100 and 60 mm with √(3² + 4²) mm
  expect(nearMirror.value).toBeCloseTo(80e-3, 12);
  expect(nearMirror.uncertainty).toBeCloseTo(1e-3, 12);
  expect(mirrorsApart.value).toBeCloseTo(160e-3, 12);
  expect(mirrorsApart.uncertainty).toBeCloseTo(5e-3, 12);
  expect(behindFarMirror).toBeCloseTo(200e-3, 12);
});

test('a turn deflects by twice its tilt in the plane of incidence, and by the cosine less across it (law of reflection)', () => {
  // M1 at 60°: 0.25 mm over 40 mm ± 10 %; M2 at 45°: 0.5 mm over 50 mm ± 2 %
  const told = (mirror: 'M1' | 'M2', axis: 'horizontal' | 'vertical') => layout.deflection(mirror, axis);
  expect(told('M1', 'horizontal').value).toBeCloseTo(2 * 6.25e-3, 12);
  expect(told('M1', 'vertical').value).toBeCloseTo(6.25e-3, 12);
  expect(told('M2', 'horizontal').value).toBeCloseTo(2 * 10e-3, 12);
  expect(told('M2', 'vertical').value).toBeCloseTo(Math.SQRT2 * 10e-3, 12);
  expect(told('M1', 'vertical').uncertainty / told('M1', 'vertical').value).toBeCloseTo(0.1, 12);
  expect(told('M2', 'vertical').uncertainty / told('M2', 'vertical').value).toBeCloseTo(0.02, 12);
});

test('a ruler measures the near card from the lens and the far one from M1', () => {
  // 40 mm before the focal plane is 50 mm before the lens; M1 stands at 80 + 160 mm
  const cards = cardsAt(layout, { beforeLens: 50e-3, behindFarMirror: 180e-3 }, 0.3e-3);
  expect(cards.near).toBeCloseTo(40e-3, 12);
  expect(cards.far).toBeCloseTo(420e-3, 12);
  const ruler = cardsByRuler(layout, cards);
  expect(ruler.beforeLens).toBeCloseTo(50e-3, 12);
  expect(ruler.behindFarMirror).toBeCloseTo(180e-3, 12);
});

test('cards of which nobody has said anything stand before M2 and almost at the laser', () => {
  const { near, far } = usualCards(layout);
  expect(near).toBeGreaterThan(0);
  expect(near).toBeLessThan(80e-3);
  // between M1 and the laser, and nearer to it than to M1: the farther apart, the better they tell (geometry)
  expect(far).toBeGreaterThan(240e-3 + 100e-3);
  expect(far).toBeLessThan(240e-3 + 200e-3);
});
