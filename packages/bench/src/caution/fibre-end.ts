/** The light of a fibre end: as one mode and as a cone, whichever reaches farther. */
import {
  averageIrradianceFrom1e,
  beamRadiusAt,
  fewModeEndDistance,
  type GuidedMode,
  gradedModes,
  halfDivergence,
  type IrradianceLimit,
  lp11CutoffV,
  type ModeFieldDefinition,
  modeDiameter1eAt,
  modeFieldRadius,
  multimodeDiameter1eFrom5Percent,
  multimodeEndDistanceFrom5Percent,
  nearestEyeDistance,
  parabolaModeRadius,
  singleModeEndDistanceFrom1e2,
  stepModes,
  vNumber,
} from '@coreward/optics';
import type { Fibre } from '../launch/launch.ts';
import { intervalOf } from '../quantity/distribution.ts';
import { type Geometry, longestOf, type Reached } from './reach.ts';
import type { FreeBeam } from './stretches.ts';

/** What leaves an end at one wavelength. */
export interface EndCone {
  readonly wavelength: number;
  /** 1/e² diameter of LP01, m; of many modes the core's, which none exceeds by much. */
  readonly modeFieldDiameter: number;
  /** At 5 % of the peak; `null`: one mode alone. */
  readonly numericalAperture: number | null;
  /** Whether LP01 alone is guided, is one of few, or one of many. */
  readonly modes: 'one' | 'few' | 'many';
  readonly coreDiameter: number;
  /** Behind a lens a narrow end spreads least: the narrowest that core and mode may be, m. */
  readonly least: { readonly coreDiameter: number; readonly modeFieldDiameter: number };
}

/** A step core with a V below this counts as carrying few modes, one of which may carry it all. @source our proposal */
const fewModesBelow = 10;

/** √(ln 20 / 2): the angle at 5 % of a Gaussian's peak over its 1/e² half angle. @source mathematics */
const fivePercentPer1e2 = Math.sqrt(Math.log(20) / 2);

/**
 * The cone of an end.
 *
 * @param launched numerical aperture at 5 % of the light that was launched, which a short fibre keeps; `null`: not known,
 *   so the narrowest that the core can emit
 */
export function endCone(
  fibre: Fibre,
  wavelength: number,
  launched: number | null,
  view: 'stated' | 'worse',
): EndCone {
  const core = view === 'stated' ? fibre.coreDiameter.value : intervalOf(fibre.coreDiameter, 0.9).high;
  const stated = fibre.numericalAperture.value;
  const doubtful = intervalOf(fibre.numericalAperture, 0.9);
  const aperture = view === 'stated' ? stated : Math.max(doubtful.low, stated / 2);
  const v = vNumber({ coreRadius: core / 2, numericalAperture: aperture }, wavelength);
  const largestV =
    view === 'stated'
      ? v
      : vNumber({ coreRadius: core / 2, numericalAperture: Math.min(0.99, doubtful.high) }, wavelength);
  const modes =
    largestV <= lp11CutoffV[fibre.profile]
      ? 'one'
      : fibre.profile === 'graded' || v < fewModesBelow
        ? 'few'
        : 'many';
  // no light that fills the core leaves it in a narrower cone
  const narrowest = fivePercentPer1e2 * ((2 * wavelength) / (Math.PI * core));
  let least: EndCone['least'] | undefined;
  return {
    wavelength,
    modeFieldDiameter: modes === 'many' ? core : core * modeRadiusInCores(fibre.profile, v, view),
    numericalAperture:
      modes === 'one' ? null : Math.min(0.99, aperture, Math.max(narrowest, launched ?? narrowest)),
    modes,
    coreDiameter: core,
    get least() {
      // modes are solved for it, so once, and only behind a lens
      least ??=
        view === 'stated'
          ? { coreDiameter: core, modeFieldDiameter: this.modeFieldDiameter }
          : leastSizes(fibre, wavelength, modes);
      return least;
    },
  };
}

/** The narrowest core, and the narrowest mode at any end of core and aperture: near its cut-off a wider core holds it closer. */
function leastSizes(fibre: Fibre, wavelength: number, modes: EndCone['modes']): EndCone['least'] {
  const { low, high } = intervalOf(fibre.coreDiameter, 0.9);
  // a doubt that would leave nothing of a core leaves half of it
  const narrow = low > 0 ? low : fibre.coreDiameter.value / 2;
  if (modes === 'many') return { coreDiameter: narrow, modeFieldDiameter: narrow };
  const apertures = intervalOf(fibre.numericalAperture, 0.9);
  const bounds = [Math.max(apertures.low, fibre.numericalAperture.value / 2), Math.min(0.99, apertures.high)];
  const fields = [...new Set([narrow, high])].flatMap((core) =>
    [...new Set(bounds)].map((numericalAperture) => {
      const v = vNumber({ coreRadius: core / 2, numericalAperture }, wavelength);
      return core * modeRadiusInCores(fibre.profile, v, 'stated');
    }),
  );
  return { coreDiameter: narrow, modeFieldDiameter: Math.min(...fields) };
}

/** V of a graded core above which its LP01 is that of an endless parabola. */
const parabolaFrom = 6;
/** Below it a mode is so loosely held that its size says nothing; the mode of this V is taken. */
const leastV = 0.8;

/**
 * Mode-field radius of LP01 in core radii: as stated that of data sheets, at worst that of the Gaussian with the same far
 * field, which is wider by an eighth near the cut-off and more below it.
 */
function modeRadiusInCores(profile: Fibre['profile'], vNumber: number, view: 'stated' | 'worse'): number {
  const v = Math.max(vNumber, leastV);
  const definition = view === 'stated' ? 'petermann-2' : 'far-field';
  if (profile === 'graded') {
    return v >= parabolaFrom ? parabolaModeRadius(v) : radiusOfFirst(gradedModes(v), definition);
  }
  return radiusOfFirst(stepModes(v), definition);
}

function radiusOfFirst(modes: readonly GuidedMode[], definition: ModeFieldDefinition): number {
  const fundamental = modes.find(({ l, m }) => l === 0 && m === 1);
  // gradedModes and stepModes leave out what doubles cannot tell, never LP01 at such a V
  return fundamental === undefined ? 1 : modeFieldRadius(fundamental, definition);
}

/** A bare end. */
export function bareEndGeometry(from: string, stated: EndCone, worse: EndCone): Geometry {
  return {
    from,
    beamDefinition: stated.modes === 'many' ? '5 % of the peak' : '1/e²',
    asStated: (power, limit) => bareReach(stated, power, limit),
    atWorst: (power, limit) => longestOf(bareReach(stated, power, limit), bareReach(worse, power, limit)),
    closest: (power, limit) =>
      Math.max(bareIrradiance(stated, power, limit), bareIrradiance(worse, power, limit)),
  };
}

function bareReach(cone: EndCone, power: number, limit: IrradianceLimit): Reached {
  const { wavelength, modeFieldDiameter, numericalAperture } = cone;
  const oneMode = { power, limit, wavelength, modeFieldDiameter1e2: modeFieldDiameter };
  if (numericalAperture === null) return singleModeEndDistanceFrom1e2(oneMode);
  const manyModes = {
    power,
    limit,
    fibreNumericalAperture5Percent: numericalAperture,
    launchNumericalAperture5Percent: numericalAperture,
  };
  return cone.modes === 'few'
    ? fewModeEndDistance({ ...oneMode, ...manyModes })
    : multimodeEndDistanceFrom5Percent(manyModes);
}

function bareIrradiance(cone: EndCone, power: number, limit: IrradianceLimit): number {
  const { wavelength, modeFieldDiameter, numericalAperture } = cone;
  const ofMode = modeDiameter1eAt(wavelength, modeFieldDiameter, nearestEyeDistance);
  const ofCone =
    numericalAperture === null
      ? ofMode
      : multimodeDiameter1eFrom5Percent(numericalAperture, nearestEyeDistance);
  const diameter = cone.modes === 'many' ? ofCone : Math.min(ofMode, ofCone);
  return averageIrradianceFrom1e(power, diameter, limit.averagingDiameter);
}

/** Sine of the launched cone at 5 % of the peak, the narrower axis: a short fibre keeps it. */
export function launchedAperture({ arrival, focalLength }: FreeBeam): number {
  const halfAngle1e2 =
    focalLength === null
      ? Math.min(halfDivergence(arrival.x), halfDivergence(arrival.y))
      : Math.min(beamRadiusAt(arrival.x, 0), beamRadiusAt(arrival.y, 0)) / Math.abs(focalLength);
  return Math.min(0.99, Math.sin(Math.atan(fivePercentPer1e2 * halfAngle1e2)));
}

/** The cone of an end as stated, and where it reaches farthest. */
export interface Cones {
  readonly stated: EndCone;
  readonly worse: EndCone;
}
