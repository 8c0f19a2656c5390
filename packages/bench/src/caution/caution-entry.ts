import { type Basis, type HazardEvidence, type LimitSet, weakestEvidence } from '@coreward/optics';
import { type AtRisk, type CautionLevel, type Hazard, type HazardPlace, hazardText } from './hazard.ts';
import { standingLine } from './standing-line.ts';

/** One entry of `coreward caution --json`. SI; `null` for what does not apply. docs/cautions.md tells every key. */
export interface CautionEntry {
  readonly kind: 'hazard' | 'advice' | 'step' | 'question' | 'deferral';
  readonly id: string;
  readonly point: string;
  readonly quantity: string;
  readonly value: number | null;
  readonly unit: string | null;
  readonly limit: number | null;
  readonly limitSet: LimitSet | null;
  readonly duration_s: number | null;
  readonly hazardDistance_m: number | null;
  readonly text: string;
  readonly level: CautionLevel | 'ask' | 'advice' | 'who decides';
  readonly atRisk: readonly AtRisk[];
  readonly doNow: string;
  readonly place: PlaceJson | null;
  readonly from: string | null;
  readonly timesLimit: number | null;
  readonly wavelength_m: number | null;
  readonly invisible: boolean;
  readonly power_W: number | null;
  /** For the power and sizes exactly as written, nothing added for what is not known. */
  readonly asWritten: { readonly power_W: number; readonly hazardDistance_m: number } | null;
  readonly otherTimes: readonly {
    readonly duration_s: number;
    readonly hazardDistance_m: number;
    readonly wording: string;
  }[];
  readonly assumed: readonly string[];
  readonly evidence: HazardEvidence | null;
  readonly sources: readonly Basis[];
  /** Of a question: how an answer is written. */
  readonly answers: readonly string[];
  /** Of a question: what was answered; `null`: nothing yet. */
  readonly answered: string | null;
}

/** Where on the line of light, as `HazardPlace` says it. */
export interface PlaceJson {
  readonly part: HazardPlace['part'];
  readonly index: number | null;
  readonly from_m: number;
  readonly to_m: number;
}

/** What an entry says that is no hazard. */
export const plainEntry: Omit<CautionEntry, 'kind' | 'id' | 'point' | 'quantity' | 'text' | 'level'> = {
  value: null,
  unit: null,
  limit: null,
  limitSet: null,
  duration_s: null,
  hazardDistance_m: null,
  atRisk: [],
  doNow: '',
  place: null,
  from: null,
  timesLimit: null,
  wavelength_m: null,
  invisible: false,
  power_W: null,
  asWritten: null,
  otherTimes: [],
  assumed: [],
  evidence: null,
  sources: [],
  answers: [],
  answered: null,
};

/** A hazard as data. */
export function hazardEntry(hazard: Hazard): CautionEntry {
  const { asWritten, place, basis } = hazard;
  return {
    kind: 'hazard',
    id: hazard.id,
    point: hazard.point,
    quantity: hazard.quantity,
    value: hazard.value,
    unit: hazard.unit,
    limit: hazard.limit,
    limitSet: hazard.limitSet,
    duration_s: hazard.exposureTime,
    hazardDistance_m: hazard.hazardDistance,
    text: hazardText(hazard),
    level: hazard.level,
    atRisk: hazard.atRisk,
    doNow: hazard.doNow,
    place: { part: place.part, index: place.index, from_m: place.from, to_m: place.to },
    from: hazard.from,
    timesLimit: hazard.timesLimit,
    wavelength_m: hazard.wavelength,
    invisible: hazard.invisible,
    power_W: hazard.power,
    asWritten:
      asWritten === null ? null : { power_W: asWritten.power, hazardDistance_m: asWritten.hazardDistance },
    otherTimes: hazard.otherTimes.map(({ exposureTime, hazardDistance, wording }) => ({
      duration_s: exposureTime,
      hazardDistance_m: hazardDistance,
      wording,
    })),
    assumed: hazard.assumed,
    evidence: weakestEvidence(basis),
    sources: basis,
    answers: [],
    answered: null,
  };
}

/** Who decides: the last entry of every list of cautions, and there once. */
export const deferralEntry: CautionEntry = {
  ...plainEntry,
  kind: 'deferral',
  id: 'who-decides',
  point: 'everywhere',
  quantity: 'none',
  level: 'who decides',
  text: standingLine,
};
