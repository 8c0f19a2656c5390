/** What the fibre's end has to bear: the spot on clean glass, and all of the light on ferrule and glue while misaligned. */
import {
  type Basis,
  beamRadiusAt,
  facetIrradianceFrom1e2,
  facetLevel,
  facetTripwires,
  waistBehindLens,
} from '@coreward/optics';
import { facetPosition } from './at-the-lens.ts';
import { atMostText, timesText } from './figures-of-caution.ts';
import { type CautionLevel, type Hazard, withoutNumbers, withoutVerdict } from './hazard.ts';
import { limitText, wavelengthText } from './limit-texts.ts';
import type { Walk } from './walk.ts';

/** Facet and ferrule. */
export function onTheFacet(walk: Walk): readonly Hazard[] {
  return [facetLoad(walk), ferruleLoad(walk), ...fuse(walk)];
}

const tripwireBasis: Basis = { evidence: 'proposal', source: facetTripwires.source };
const dirtBasis: Basis = {
  evidence: 'from memory',
  source: 'a dirty end face can burn from tens to hundreds of milliwatts',
};
const fuseBasis: Basis = {
  evidence: 'read',
  source:
    'S. Todoroki, Fiber fuse behavior veiled in its strong light emission (NIMS): some watts, single mode',
};

/** 1/e² diameter of the smallest spot that beam and lens can make, m. */
function smallestSpot({ views }: Walk): number {
  const diameters = views.map(({ arrival, focalLength }) => {
    if (focalLength === null) return 2 * Math.sqrt(beamRadiusAt(arrival.x, 0) * beamRadiusAt(arrival.y, 0));
    const x = waistBehindLens(arrival.x, focalLength);
    const y = waistBehindLens(arrival.y, focalLength);
    return 2 * Math.sqrt(x.waistRadius * y.waistRadius);
  });
  return Math.min(...diameters);
}

const common = (walk: Walk) => {
  const { laser } = walk.light;
  return {
    ...withoutNumbers,
    place: { part: 'fibre', index: null, from: facetPosition(walk), to: facetPosition(walk) },
    atRisk: ['facet'],
    wavelength: laser.wavelength,
    invisible: !laser.seen,
    power: forwardPower(walk),
  } as const;
};

/** All that runs forward falls on the facet, W. */
export const forwardPower = ({ light: { laser, companions } }: Pick<Walk, 'light'>): number =>
  companions.reduce((sum, { power }) => sum + power, laser.power);

function facetLoad(walk: Walk): Hazard {
  const { laser } = walk.light;
  const power = forwardPower(walk);
  if (isPulsed(walk)) return facetUnderPulses(walk);
  const spot = smallestSpot(walk);
  const irradiance = facetIrradianceFrom1e2(power, spot);
  const times = irradiance.peakIrradiance / facetTripwires.practicalCaution;
  const level: CautionLevel = levels[facetLevel(irradiance)];
  return {
    ...common(walk),
    id: 'facet-load',
    point: 'fibre’s end, the spot on it',
    level,
    quantity: 'peak irradiance on the facet',
    value: irradiance.peakIrradiance,
    unit: 'W/m²',
    limit: facetTripwires.practicalCaution,
    timesLimit: times,
    get what() {
      return times > 1
        ? `The spot on the fibre’s end can be ${timesText(times)} what careful practice puts on a facet.`
        : 'The spot on the fibre’s end stays under what careful practice puts on a clean facet; dirt burns at less.';
    },
    doNow: cleanFirst,
    get fine() {
      return (
        `(Estimate: ${atMostText(power, 'power')} of ${wavelengthText(laser.wavelength)} on the smallest spot, ` +
        `${atMostText(spot, 'length')} at 1/e²: ${megawatts(irradiance.peakIrradiance)} peak, ` +
        `${megawatts(irradiance.meanIrradiance)} mean; ${megawatts(facetTripwires.practicalCaution)} is common practice, no limit.)`
      );
    },
    assumed: laser.assumed,
    basis: [...laser.basis, tripwireBasis],
  };
}

const cleanFirst =
  'Clean and inspect the end with every source off, align at reduced power, then raise it in steps.';

const isPulsed = ({ answers }: Walk): boolean => answers.emission?.kind === 'pulsed';

/** An average says nothing of what one pulse does to glass: no number at all. */
function facetUnderPulses(walk: Walk): Hazard {
  const { laser } = walk.light;
  return {
    ...common(walk),
    ...withoutVerdict,
    id: 'facet-load',
    point: 'fibre’s end, the spot on it',
    what: 'The facet under pulses is not evaluated.',
    doNow: cleanFirst,
    fine: '',
    assumed: laser.assumed,
    basis: laser.basis,
  };
}

const levels = {
  'below the tripwire': 'under the limit',
  'above careful practice': 'mind',
  'above the quoted limit': 'serious',
} as const;

/** Megawatts a square centimetre, as facets are spoken of. */
const megawatts = (irradiance: number): string => `${Number((irradiance / 1e10).toPrecision(2))} MW/cm²`;

/** From here on dirt, glue and ferrule may burn, W. @source from memory: tens to hundreds of milliwatts */
export const dirtBurnsFrom = 10e-3;
/** From here on it is to be expected, W. */
const dirtBurnsSurely = 100e-3;
/** A spot this wide spreads its heat, m; no figure is known for wider ones. @source our proposal */
const focusedBelow = 100e-6;

function ferruleLoad(walk: Walk): Hazard {
  const { laser } = walk.light;
  const power = forwardPower(walk);
  const focused = smallestSpot(walk) < focusedBelow;
  const pulsed = isPulsed(walk);
  const average = pulsed ? ' on average' : '';
  const pulsesToo = pulsed ? ' That is its average heat; what single pulses do there is not evaluated.' : '';
  const level: CautionLevel =
    power >= dirtBurnsSurely ? 'serious' : power >= dirtBurnsFrom && focused ? 'mind' : 'under the limit';
  return {
    ...common(walk),
    id: 'ferrule-load',
    point: 'ferrule, glue and cladding while misaligned',
    level,
    quantity: `${pulsed ? 'average power, heat' : 'power'} on the ferrule while misaligned`,
    value: power,
    unit: 'W',
    limit: dirtBurnsFrom,
    timesLimit: power / dirtBurnsFrom,
    what:
      level === 'under the limit'
        ? `All of the light on the ferrule is under ${limitText(dirtBurnsFrom, 'power')}${average}, from which dirt and glue may burn.${pulsesToo}`
        : `Misaligned, all of ${atMostText(power, 'power')}${average} falls on ferrule, glue or dirt and can burn them.${pulsesToo}`,
    doNow: 'Walk at alignment power. Stop if you smell or see anything, or if the throughput falls.',
    fine: `(Estimate: ${wavelengthText(laser.wavelength)}; from tens to hundreds of milliwatts a dirty face burns.)`,
    assumed: laser.assumed,
    basis: [...laser.basis, dirtBasis],
  };
}

/** Where a fibre fuse may start, W; it was seen in cores of few modes, which these are at most, m. */
const fuseFrom = 1;
const fuseCoreBelow = 30e-6;

/**
 * A fuse is known from steady light of some watts. Of pulses their average says nothing as long as it is below that:
 * where their peaks are above it, nobody here knows.
 */
function fuse(walk: Walk): readonly Hazard[] {
  const { laser } = walk.light;
  if (walk.launch.fibre.coreDiameter.value > fuseCoreBelow) return [];
  const power = forwardPower(walk);
  const peak = peakPower(walk);
  const place = {
    ...common(walk),
    id: 'fibre-fuse',
    point: 'fibre core, burning back towards the source',
    doNow: 'Have a shutter at hand and watch the throughput; clean every end before you raise the power.',
    assumed: laser.assumed,
    basis: [...laser.basis, fuseBasis],
  };
  const light = `of ${wavelengthText(laser.wavelength)}`;
  if (power >= fuseFrom) {
    const average = peak > power ? ' on average' : '';
    const pulses = peak > power ? ' What single pulses do to the core is not evaluated.' : '';
    return [
      {
        ...place,
        level: 'serious',
        quantity: `${average === '' ? 'power' : 'average power'} in the fibre`,
        value: power,
        unit: 'W',
        limit: fuseFrom,
        timesLimit: power / fuseFrom,
        what: `At such a power a burn at a dirty end can run back along the core towards the source.${pulses}`,
        fine: `(Estimate: ${atMostText(power, 'power')}${average} ${light}; it starts at some watts.)`,
      },
    ];
  }
  if (peak < fuseFrom) return [];
  return [
    {
      ...place,
      ...withoutVerdict,
      what: `Whether pulses of ${atMostText(peak, 'power')} let a burn at a dirty end run back along the core is not evaluated.`,
      fine: `(Estimate: ${light}, ${atMostText(power, 'power')} on average, spread evenly over each pulse; steady light does it from some watts.)`,
    },
  ];
}

/** Of all that runs forward, W: of pulses their energy over their duration. */
function peakPower(walk: Walk): number {
  const { emission } = walk.answers;
  const power = forwardPower(walk);
  if (emission?.kind !== 'pulsed') return power;
  return power / Math.min(1, emission.pulseDuration * emission.repetitionRate);
}
