import type { Expected, Forecast, OffAxis, Tolerances } from './expected.ts';

/** A forecast as `coreward forecast --json` prints it. docs/forecast-json.md tells every key. */
export type ForecastJson = ReturnType<typeof forecastJson>;

/** A forecast as plain data: SI numbers, the unit behind the underscore of each name, `null` for what does not apply. */
export function forecastJson(forecast: Forecast) {
  const { launch, ledger, notGuided, tolerances, nextMeasurement, remarks, cautions, assumptions } = forecast;
  return {
    coreward: 1,
    name: launch.name,
    fibre: fibreJson(forecast),
    facet: facetJson(forecast),
    coupling: couplingJson(forecast),
    ledger: ledger.map(({ id, group, label, transmission, low, high, left }) => ({
      id,
      label,
      transmission,
      low,
      high,
      group,
      lowLeft_W: left?.low ?? null,
      highLeft_W: left?.high ?? null,
    })),
    tolerances: {
      guided: tolerancesJson(tolerances.guided),
      fundamental: tolerances.fundamental === null ? null : tolerancesJson(tolerances.fundamental),
      handLimit: tolerances.handLimit,
      handLimitGuided: tolerances.handLimitGuided,
    },
    output: outputJson(forecast),
    nextMeasurement: nextMeasurement.map(({ quantity, gauge, narrows, how }) => ({
      quantity,
      gauge,
      narrows,
      how,
    })),
    cautions: cautions.map(({ id, level, text }) => ({ id, level, text })),
    notGuided: {
      beforeFacet: notGuided.beforeFacet,
      reflected: notGuided.reflected,
      cladding: notGuided.cladding,
      beyondCladding: notGuided.beyondCladding,
    },
    meter: meterJson(forecast),
    remarks: remarks.map(({ id, kind, text }) => ({ id, kind, text })),
    assumptions: [...assumptions],
  };
}

function fibreJson({ fibre }: Forecast) {
  return {
    vNumber: fibre.vNumber.value,
    low_vNumber: fibre.vNumber.low,
    high_vNumber: fibre.vNumber.high,
    lpModes: fibre.lpModes,
    modesWithOrientation: fibre.modesWithOrientation,
    lpModesRange: fibre.lpModesRange === null ? null : [...fibre.lpModesRange],
    cutoffWavelength_m: fibre.cutoffWavelength,
    modeFieldDiameter_m: fibre.modeFieldDiameter,
    bestSpotDiameter_m: fibre.bestSpotDiameter,
  };
}

function facetJson({ facet }: Forecast) {
  return {
    spotDiameterX_m: facet.spotDiameterX,
    spotDiameterY_m: facet.spotDiameterY,
    waistOffsetX_m: facet.waistOffsetX,
    waistOffsetY_m: facet.waistOffsetY,
    waistDiameterX_m: facet.waistDiameterX,
    waistDiameterY_m: facet.waistDiameterY,
    halfAngle_rad: facet.halfAngle,
  };
}

function couplingJson({ coupling }: Forecast) {
  return {
    guided: coupling.guided,
    fundamental: coupling.fundamental,
    bestGuided: coupling.bestGuided,
    bestFundamental: coupling.bestFundamental,
    bestGuidedAt: offAxisJson(coupling.bestGuidedAt),
    low_guided: coupling.guidedInterval.low,
    high_guided: coupling.guidedInterval.high,
    low_fundamental: coupling.fundamentalInterval?.low ?? null,
    high_fundamental: coupling.fundamentalInterval?.high ?? null,
    method: coupling.method,
    methodNote: coupling.methodNote,
    aim: coupling.aim,
  };
}

function offAxisJson(at: OffAxis | null) {
  return at === null
    ? null
    : { offsetX_m: at.offsetX, offsetY_m: at.offsetY, tiltX_rad: at.tiltX, tiltY_rad: at.tiltY };
}

function tolerancesJson({ offsetFor1dB, tiltFor1dB, defocusFor1dB, screws }: Tolerances) {
  return {
    offsetFor1dB_m: offsetFor1dB,
    tiltFor1dB_rad: tiltFor1dB,
    defocusFor1dB_m: defocusFor1dB,
    screws: screws.map(({ mirror, axis, turnsFor1dB }) => ({ mirror, axis, turnsFor1dB })),
  };
}

function outputJson({ output }: Forecast) {
  return {
    power_W: output.power.value,
    low_W: output.power.low,
    high_W: output.power.high,
    fractionOfLaser: output.fractionOfLaser.value,
    low_fractionOfLaser: output.fractionOfLaser.low,
    high_fractionOfLaser: output.fractionOfLaser.high,
    diameter_m: output.diameter,
    fullDivergence_rad: output.fullDivergence,
    collimated: output.collimated,
    shape: output.shape,
  };
}

function meterJson({ meter }: Forecast) {
  const watts = ({ value, low, high }: Expected) => ({ value_W: value, low_W: low, high_W: high });
  return {
    reading: watts(meter.reading),
    guided: watts(meter.guided),
    claddingReaches: meter.claddingReaches,
  };
}
