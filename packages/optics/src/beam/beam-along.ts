import { beamRadiusAt, type GaussianBeam, halfDivergence } from './gaussian-beam.ts';

/**
 * An astigmatic beam as a scan along one direction across it shows it: second moments alone, so the axes' squares of width
 * add by cos² and sin² at every place, and the waist lies where *that* sum is least. Its M² is larger than either axis's
 * unless both have their waists in one place and in one size.
 *
 * Waist positions add by how fast each axis spreads; a plain mean of them is wrong as soon as the axes spread differently.
 *
 * @param x the beam on its own x axis; both axes count positions from one plane and have one wavelength
 * @param y the same on its own y axis
 * @param azimuth from the beam's x axis to the direction of the scan, rad
 * @source ISO 11146-1 (from memory): second moments turn like a tensor, and each is a parabola along the light
 */
export function beamAlong(x: GaussianBeam, y: GaussianBeam, azimuth: number): GaussianBeam {
  const parts = [
    { axis: x, share: Math.cos(azimuth) ** 2 },
    { axis: y, share: Math.sin(azimuth) ** 2 },
  ];
  const sum = (of: (axis: GaussianBeam) => number) =>
    parts.reduce((total, { axis, share }) => total + share * of(axis), 0);
  const spread = sum((axis) => halfDivergence(axis) ** 2);
  const waistPosition = sum((axis) => halfDivergence(axis) ** 2 * axis.waistPosition) / spread;
  const waistRadius = Math.sqrt(sum((axis) => beamRadiusAt(axis, waistPosition) ** 2));
  const { wavelength } = x;
  return {
    ...x,
    waistRadius,
    waistPosition,
    quality: Math.max(1, (Math.PI * (x.mediumIndex ?? 1) * waistRadius * Math.sqrt(spread)) / wavelength),
  };
}
