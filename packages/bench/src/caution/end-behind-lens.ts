/** An end behind a lens that collimates, or nearly does. */
import {
  averageIrradianceFrom1e,
  collimatedDistanceFrom1e,
  collimatedMultimodeDistanceFrom5Percent,
  collimatedSingleModeDistanceFrom1e2,
  type IrradianceLimit,
  modeDiameter1eAt,
  multimodeDiameter1eFrom5Percent,
  width1eFromWidth1e2,
} from '@coreward/optics';
import { intervalOf } from '../quantity/distribution.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { EndCone } from './fibre-end.ts';
import { type Geometry, longestOf, type Reached } from './reach.ts';

/** Of a lens behind an end, m: as stated, and the ends of what it may be. */
export interface FocalLengths {
  readonly stated: number;
  readonly low: number;
  readonly high: number;
}

/** Of a lens that is written down. A doubt that would leave nothing of it leaves half of it. */
export function focalLengthsOf(focal: Quantity): FocalLengths {
  const { low, high } = intervalOf(focal, 0.9);
  return { stated: focal.value, low: low > 0 ? low : focal.value / 2, high };
}

/** An end behind a lens that collimates: of each size the end that makes the number worse. */
export function collimatedEndGeometry(
  from: string,
  stated: EndCone,
  worse: EndCone,
  focalLength: FocalLengths,
): Geometry {
  return {
    from,
    beamDefinition: stated.modes === 'many' ? '5 % of the peak' : '1/e²',
    asStated: (power, limit) => collimatedReach(stated, focalLength.stated, power, limit),
    atWorst: (power, limit) =>
      longestOf(
        collimatedReach(stated, focalLength.stated, power, limit),
        // a long one spreads less and begins wider: near the limit the short one may reach farther
        ...[focalLength.low, focalLength.stated, focalLength.high].map((one) =>
          collimatedReach(worse, one, power, limit),
        ),
        besideTheFocus(worse, focalLength.high, power, limit),
      ),
    closest: (power, limit) => {
      // the narrowest beam: the cone that opens least, behind the shortest lens
      const diameters = [stated, worse].flatMap(({ wavelength, modeFieldDiameter, numericalAperture }) => [
        modeDiameter1eAt(wavelength, modeFieldDiameter, focalLength.low),
        ...(numericalAperture === null
          ? []
          : [multimodeDiameter1eFrom5Percent(numericalAperture, focalLength.low)]),
      ]);
      return averageIrradianceFrom1e(power, Math.min(...diameters), limit.averagingDiameter);
    },
  };
}

function collimatedReach(cone: EndCone, focalLength: number, power: number, limit: IrradianceLimit): Reached {
  const { wavelength, modeFieldDiameter, numericalAperture, least } = cone;
  const ofMode = (modeFieldDiameter1e2: number): Reached =>
    collimatedSingleModeDistanceFrom1e2({ power, limit, wavelength, modeFieldDiameter1e2, focalLength });
  const oneMode = (): Reached => longestOf(ofMode(modeFieldDiameter), ofMode(least.modeFieldDiameter));
  if (numericalAperture === null) return oneMode();
  const manyModes = collimatedMultimodeDistanceFrom5Percent({
    power,
    limit,
    coreDiameter: least.coreDiameter,
    numericalAperture5Percent: numericalAperture,
    focalLength,
  });
  return cone.modes === 'few' ? longestOf(oneMode(), manyModes) : manyModes;
}

/**
 * The end a little outside the focus, as a lens that was turned by hand has it: the light narrows to a picture of the end,
 * and wherever that is put it is φ times the way wide, with nothing of the width at the lens in it. Of a beam narrower than
 * what the limit allows this hardly differs; of a wider one, under the limit at the lens, it is all there is to say.
 */
function besideTheFocus(cone: EndCone, focalLength: number, power: number, limit: IrradianceLimit): Reached {
  const { least, modes } = cone;
  const picture = modes === 'many' ? least.coreDiameter : least.modeFieldDiameter;
  return collimatedDistanceFrom1e({
    power,
    limit,
    exitDiameter1e: null,
    fullDivergence1e: modes === 'many' ? picture / focalLength : width1eFromWidth1e2(picture / focalLength),
  });
}
