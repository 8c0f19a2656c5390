import type { FacetBeam } from '../beam/facet-beam.ts';
import type { CoherentBeam } from './gaussian-field.ts';

/** One Hermite-Gauss member of a Gaussian Schell-model beam: orders along x' and y', and its share of the power. */
export interface HermiteMember {
  readonly orderX: number;
  readonly orderY: number;
  readonly weight: number;
}

/** The members of a beam, heaviest first. */
export interface HermiteCrowd {
  /** The embedded Gaussian, waist w₀/√M², whose Hermite-Gauss modes the members are. */
  readonly embedded: CoherentBeam;
  readonly members: readonly HermiteMember[];
}

/**
 * The incoherent sum of Hermite-Gauss modes that a Gaussian Schell-model beam is, until less than `leftOver` of the
 * power is missing.
 *
 * @source A. Starikov and E. Wolf, J. Opt. Soc. Am. 72, 923 (1982) (from memory): weights (1−t)tⁿ, t = (M²−1)/(M²+1)
 */
export function hermiteCrowd(beam: FacetBeam, leftOver: number): HermiteCrowd {
  const ratioX = (beam.m2X - 1) / (beam.m2X + 1);
  const ratioY = (beam.m2Y - 1) / (beam.m2Y + 1);
  const members: HermiteMember[] = [];
  // tⁿ < leftOver/4 on either axis is beyond what matters
  const last = (ratio: number) => (ratio === 0 ? 0 : Math.ceil(Math.log(leftOver / 4) / Math.log(ratio)));
  for (let orderX = 0; orderX <= last(ratioX); orderX += 1) {
    for (let orderY = 0; orderY <= last(ratioY); orderY += 1) {
      members.push({
        orderX,
        orderY,
        weight: (1 - ratioX) * ratioX ** orderX * (1 - ratioY) * ratioY ** orderY,
      });
    }
  }
  members.sort((a, b) => b.weight - a.weight);
  let missing = 1;
  const enough = members.findIndex(({ weight }) => {
    missing -= weight;
    return missing < leftOver;
  });
  return {
    embedded: {
      ...beam,
      waistRadiusX: beam.waistRadiusX / Math.sqrt(beam.m2X),
      waistRadiusY: beam.waistRadiusY / Math.sqrt(beam.m2Y),
    },
    members: enough < 0 ? members : members.slice(0, enough + 1),
  };
}

/** The real factor that turns the embedded Gaussian's field into that of a member, at a point of the facet. */
export function hermiteFactor(
  { embedded }: HermiteCrowd,
  { orderX, orderY }: HermiteMember,
  waveNumber: number,
): (x: number, y: number) => number {
  const c = Math.cos(embedded.azimuth);
  const s = Math.sin(embedded.azimuth);
  const radiusAt = (waist: number, z: number) =>
    waist * Math.hypot(1, (2 * z) / (waveNumber * waist * waist));
  const scaleX = Math.SQRT2 / radiusAt(embedded.waistRadiusX, embedded.waistZX);
  const scaleY = Math.SQRT2 / radiusAt(embedded.waistRadiusY, embedded.waistZY);
  return (x, y) => {
    const dx = x - embedded.offsetX;
    const dy = y - embedded.offsetY;
    return hermite(orderX, scaleX * (c * dx + s * dy)) * hermite(orderY, scaleY * (c * dy - s * dx));
  };
}

/** Hₙ(t)/√(2ⁿ n!), by its recurrence. */
function hermite(order: number, t: number): number {
  let below = 0;
  let here = 1;
  for (let n = 0; n < order; n += 1) {
    const above = (Math.SQRT2 * t * here - Math.sqrt(n) * below) / Math.sqrt(n + 1);
    below = here;
    here = above;
  }
  return here;
}
