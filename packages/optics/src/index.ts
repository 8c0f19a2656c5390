export { beamAlong } from './beam/beam-along.ts';
export {
  beamFromSpread,
  beamWithWaistAt,
  type RadiusAndWaistPlace,
  type Spread,
} from './beam/beam-from-spread.ts';
export { carryBeam, transformBeam } from './beam/carry-beam.ts';
export { type Aim, type FacetBeam, facetBeam, perfectAim } from './beam/facet-beam.ts';
export {
  beamRadiusAt,
  fullDivergence,
  type GaussianBeam,
  gouyPhaseAt,
  halfDivergence,
  rayleighRange,
  wavefrontRadiusAt,
} from './beam/gaussian-beam.ts';
export { gaussianOverlap } from './beam/gaussian-overlap.ts';
export { fwhmFromRadius, powerInsideCircle, radiusFromFwhm } from './beam/intensity-profile.ts';
export {
  type EllipticAperture,
  type EllipticSpot,
  powerThroughAperture,
  roundApertureAtIncidence,
} from './beam/power-through-aperture.ts';
export {
  carryRay,
  chainMatrix,
  determinant,
  type OpticalElement,
  product,
  type Ray,
  type RayMatrix,
  rayMatrix,
} from './beam/ray-matrix.ts';
export { type AberratedMeeting, aberratedGaussianEstimate } from './coupling/aberrated-gaussian.ts';
export { decays, type ModeSet, modeSet, onlyFundamental } from './coupling/mode-set.ts';
export { type Overlap, type OverlapOptions, overlapOf } from './coupling/overlap.ts';
export { parabolaGroupPowers } from './coupling/parabola-groups.ts';
export { type BeamMoments, momentsOf, phaseSpaceFraction } from './coupling/phase-space.ts';
export type { Pupil } from './coupling/pupil.ts';
export { type GuidedRays, guidedRays, type RaySample, raySample } from './coupling/ray-sample.ts';
export { truncatedGaussianCoupling } from './coupling/truncated-gaussian.ts';
export {
  type CalorimeterRates,
  conductance,
  powerFromRates,
  type Thermistor,
  thermistorResistance,
  thermistorSlope,
  thermistorTemperature,
} from './detector/calorimeter.ts';
export { isUnclipped, lightFromSrgb } from './detector/camera.ts';
export {
  balancedRotationNoise,
  noiseCrossoverVoltage,
  noiseEquivalentPower,
  shotNoise,
  thermalNoise,
} from './detector/noise.ts';
export {
  isLoadSaturated,
  type LoadedPhotodiode,
  loadVoltage,
  powerFromLoadVoltage,
  quantumEfficiency,
  quantumLimitResponsivity,
  type SiliconResponsivity,
  shortCircuitCurrent,
  siliconResponsivityEstimate,
  unbiasedVoltageLimit,
} from './detector/photodiode.ts';
export {
  estimateValidity,
  glogeUEstimate,
  husseyMartinezRadiusEstimate,
  marcuseRadiusEstimate,
  rudolphNeumannWEstimate,
  type Validity,
} from './fibre/estimates.ts';
export { farFieldQ, farFieldSine } from './fibre/far-field.ts';
export type { GradedMode } from './fibre/graded-field.ts';
export { gradedCutoff, gradedModes, gradedVRange } from './fibre/graded-modes.ts';
export {
  fillRadialTable,
  fillRadialTables,
  fillSpectrumTable,
  fillSpectrumTables,
  type GuidedMode,
  radialField,
  spectrum,
} from './fibre/guided-mode.ts';
export { type ParabolaGroup, parabolaGroups, parabolaModeRadius } from './fibre/infinite-parabola.ts';
export { type LpMode, normalisedPropagation, orientations } from './fibre/lp-mode.ts';
export { countModes, type ModeCount, modeCountEstimate } from './fibre/mode-count.ts';
export {
  type BestGaussian,
  bestGaussian,
  type ModeFieldDefinition,
  modeFieldDefinitions,
  modeFieldRadius,
} from './fibre/mode-field.ts';
export {
  acrylicMixing,
  balancedAngleSquared,
  type MixingFibre,
  mixedAngleSquared,
} from './fibre/mode-mixing.ts';
export { type ModeWander, modeWander, mostWanderingModes } from './fibre/mode-wander.ts';
export { outerRadius } from './fibre/outer-radius.ts';
export { coreFraction } from './fibre/radial-integral.ts';
export { secondMoments } from './fibre/second-moments.ts';
export {
  type FibreEvidence,
  type Limits,
  type StandardDesignation,
  type StandardFibre,
  singleModeRequirement,
  standardDesignations,
  standardFibre,
  standardFibres,
} from './fibre/standard-fibres.ts';
export type { StepMode } from './fibre/step-field.ts';
export { stepModes, stepVRange } from './fibre/step-modes.ts';
export {
  coreIndex,
  effectiveIndex,
  type Guide,
  lp11CutoffV,
  lp11CutoffWavelength,
  vNumber,
} from './fibre/v-number.ts';
export type { Glass, ThermoOptic } from './glass/glass.ts';
export { glassNamed, glassNames } from './glass/glass-named.ts';
export {
  abbeNumber,
  fraunhoferLines,
  groupIndex,
  indexSlope,
  refractiveIndex,
} from './glass/refractive-index.ts';
export { fusedSilica, germania, germaniaDopedSilica } from './glass/silica.ts';
export { thermoOpticCoefficient } from './glass/thermo-optic.ts';
export {
  type AlignmentPower,
  type AlignmentViewing,
  alignmentPower,
  attenuationNeeded,
} from './hazard/alignment-power.ts';
export {
  type AssumedTime,
  assumedTime,
  assumedTimes,
  isVisible,
  mustNotRelyOnReaction,
  type Situation,
} from './hazard/assumed-time.ts';
export {
  type AveragingStop,
  averagingStop,
  eyeStopDiameter,
  nearestEyeDistance,
  skinStopDiameter,
  stopArea,
} from './hazard/averaging-stop.ts';
export {
  averageIrradianceFrom1e,
  type BeamDefinition,
  fractionThroughStop,
  fullDivergence1eFromHalfAngle1e2,
  halfAngle1e2FromHalfAngle1Percent,
  hotSpotFactor,
  peakIrradianceFrom1e,
  width1e2FromFwhm,
  width1eFromFwhm,
  width1eFromWidth1e2,
} from './hazard/beam-definition.ts';
export {
  beyondFocusDistanceFrom1e,
  type CollimatedBeam1e,
  collimatedDistanceFrom1e,
  collimatedDistanceLinearFrom1e,
  ellipticDiodeDistanceFrom1e,
} from './hazard/beam-distance.ts';
export {
  type ClassEstimate,
  classEstimate,
  classEstimateThroughStops,
  type StopPowers,
  withLabel,
} from './hazard/class-estimate.ts';
export { type ClassFigure, type ClassFigures, class1Figure, classFigures } from './hazard/class-figures.ts';
export {
  collimatedMultimodeDistanceFrom5Percent,
  collimatedSingleModeDistanceFrom1e2,
} from './hazard/collimated-output-distance.ts';
export {
  breakpointT1,
  breakpointT2,
  correctionA,
  correctionB,
  correctionC,
  correctionE,
  type Factor,
  largestCountedAngle,
  photochemicalFieldOfView,
} from './hazard/correction-factors.ts';
export {
  type DiffuseSpot,
  diffuseDistance,
  diffuseIrradiance,
  diffuseViewingDistances,
  glassReflection,
  leastMirrorPart,
} from './hazard/diffuse-viewing.ts';
export {
  type Basis,
  evidenceMarks,
  type HazardEvidence,
  joinBases,
  weakestEvidence,
} from './hazard/evidence.ts';
export { type Exposure, type PulseTrain, smallestCountedAngle } from './hazard/exposure.ts';
export {
  type ExposureLimit,
  exposureLimit,
  type IrradianceLimit,
  type LimitFacts,
  limitsByHarm,
  powerAtLimit,
} from './hazard/exposure-limit.ts';
export {
  type AlignmentEyewear,
  alignmentEyewear,
  type EyewearMode,
  eyewearModes,
  largestDensity,
  largestScaleNumber,
  type OpticalDensity,
  opticalDensityForPower,
  opticalDensityForPulse,
} from './hazard/eyewear.ts';
export {
  type FacetFinding,
  type FacetIrradiance,
  type FacetLevel,
  facetFindings,
  facetIrradianceFrom1e2,
  facetLevel,
  facetTripwires,
  multimodeFacetIrradiance,
} from './hazard/facet.ts';
export {
  fewModeEndDistance,
  type MagnifierLine,
  type MultimodeEnd5Percent,
  magnifierLine,
  modeDiameter1eAt,
  multimodeDiameter1eFrom5Percent,
  multimodeEndDistanceFrom5Percent,
  type SingleModeEnd1e2,
  singleModeEndDistanceFrom1e2,
  wideConeEndDistanceFrom5Percent,
} from './hazard/fibre-end-distance.ts';
export { type BothLimits, governingLimit, listed } from './hazard/governing-limit.ts';
export {
  type DistanceForm,
  type DistanceFrom,
  type HazardDistance,
  isUnderLimitEverywhere,
  type Judged,
  longestDistance,
} from './hazard/hazard-distance.ts';
export { classWording, type LaserClass, laserClasses, worstClass } from './hazard/laser-class.ts';
export type { Harm } from './hazard/limit-row.ts';
export {
  type LimitSet,
  limitSetNames,
  limitSets,
  limitSetTitles,
  type Tissue,
  tissues,
} from './hazard/limit-set.ts';
export {
  type AssumedPower,
  type HiddenInfrared,
  hiddenInfrared,
  type InfraredKnown,
  powerToAssume,
} from './hazard/power-to-assume.ts';
export { governingTrainLimit, type TrainLimit, type TrainRule, trainLimit } from './hazard/pulse-train.ts';
export {
  type PulsedClass1,
  type PulsedClassEstimate,
  type PulsedLaser,
  pulsedClass1Figure,
  pulsedClassEstimate,
} from './hazard/pulsed-class.ts';
export { type Reach, reachIn } from './hazard/room-reach.ts';
export {
  type CombinedExposure,
  combinedExposure,
  type HarmSum,
  type Line,
  worseCombinedExposure,
} from './hazard/several-wavelengths.ts';
export { simplifiedEyeLimit } from './hazard/simplified-limit.ts';
export { type ViewingCondition, viewingConditions } from './hazard/viewing-condition.ts';
export { beamFromFibre, type FibreOutput } from './lens/collimated-output.ts';
export { focalLengthAt, tipMovement } from './lens/focus-by-wavelength.ts';
export { backFocalShift, type Singlet, type SingletFocus, singletFocus } from './lens/singlet.ts';
export { waistBehindLens } from './lens/waist-behind-lens.ts';
export { airGapExtremes, airGapMeanTransmission, airGapTransmission } from './loss/air-gap.ts';
export {
  type AngledFacet,
  angledFacet,
  type BackReflection,
  backReflectionOverlap,
} from './loss/angled-facet.ts';
export {
  fibreTransmission,
  infraredAttenuation,
  type RayleighCoefficient,
  rayleighAttenuation,
  rayleighCoefficients,
  ultravioletTailMatters,
  type WaterPeak,
  waterPeaks,
} from './loss/attenuation.ts';
export {
  type AttenuationCeiling,
  attenuationCeiling,
  attenuationCeilings,
  type CableDesignation,
} from './loss/attenuation-ceiling.ts';
export { type AttenuationEstimate, attenuationEstimate } from './loss/attenuation-estimate.ts';
export {
  type BentFibre,
  type BentMode,
  bendAttenuation,
  bendAttenuationInterval,
  bendFormulaHolds,
  bulkSilicaRadiusFactor,
  criticalBendRadius,
} from './loss/bend.ts';
export {
  type BendDesignation,
  type BendLimit,
  bendLimits,
  type SmallestBendRadius,
  smallestBendRadii,
  smallestBendRadius,
} from './loss/bend-limits.ts';
export {
  bentNumericalAperture,
  type MultimodeGuide,
  remainingModeFraction,
  smallestCountedRadius,
} from './loss/bend-multimode.ts';
export {
  type HandlingRadii,
  handlingRadii,
  longLifeShare,
  proofStress,
  radiusAtProofShare,
  stressOfStrain,
  surfaceStrain,
  youngsModulus,
} from './loss/bend-strength.ts';
export {
  type ConnectorFamily,
  type ConnectorKind,
  type ConnectorName,
  connectorKind,
  connectorKinds,
  connectorNames,
  isAngled,
} from './loss/connector.ts';
export {
  connectorPairCeiling,
  type InsertionLoss,
  insertionLosses,
  type ReturnLossClass,
  returnLossClasses,
} from './loss/connector-loss.ts';
export {
  decibelFromNepers,
  decibelFromTransmission,
  decibelPerKilometreFromNepersPerMetre,
  nepersFromDecibel,
  nepersFromTransmission,
  nepersPerMetreFromDecibelPerKilometre,
  transmissionFromDecibel,
  transmissionFromNepers,
} from './loss/decibel.ts';
export { effectiveRadiusFactor, elastoOpticCoefficients, strainOpticFactor } from './loss/elasto-optic.ts';
export type { Evidence, Provenance } from './loss/evidence.ts';
export {
  type ComplexIndex,
  normalReflectance,
  obliqueReflectance,
  type Reflectance,
  unpolarizedReflectance,
} from './loss/fresnel.ts';
export { gapTransmission, offsetTransmission, tiltTransmission } from './loss/joint.ts';
export { type Mating, mates } from './loss/mating.ts';
export {
  type BenchMirror,
  type BenchMirrorKind,
  benchMirror,
  benchMirrors,
  type Metal,
  metalIndices,
  metalReflectance,
} from './loss/mirror.ts';
export { straightTransmission, transmissionWithGhosts } from './loss/plain-element.ts';
export { brentMinimum, brentRoot, type LineMinimum } from './numerics/brent.ts';
export { type LeastSquares, leastSquares, orthonormal } from './numerics/least-squares.ts';
export {
  type Fit,
  type FitEnd,
  type FitLimits,
  levenbergMarquardt,
  usualFitLimits,
} from './numerics/levenberg-marquardt.ts';
export { median, medianDeviation } from './numerics/median.ts';
export { type Minimum, nelderMead, type SearchLimits } from './numerics/nelder-mead.ts';
export { erfc, normalCdf, normalQuantile } from './numerics/normal.ts';
export { normalFrom, seededUniform } from './numerics/random.ts';
export { sobolDimensions, sobolPoints } from './numerics/sobol.ts';
export { studentProbability, studentQuantile } from './numerics/student.ts';
export { OutOfRange } from './out-of-range.ts';
