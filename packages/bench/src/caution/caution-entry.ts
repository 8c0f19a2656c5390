import { type Basis, type HazardEvidence, type LimitSet, weakestEvidence } from '@coreward/optics';
import type { Cautions } from './cautions.ts';
import { type AtRisk, type CautionLevel, type Hazard, type HazardPlace, hazardText } from './hazard.ts';
import { isOpen } from './questions.ts';
import { afterExposure, standingLine } from './standing-line.ts';
import type { StepCautions } from './step-cautions.ts';
import { lineSummaries } from './summary.ts';
import { alignmentText, classText, eyewearText } from './summary-texts.ts';

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

/** The cautions of a bench as data for scripts: hazards worst first, advice, questions, and who decides. */
export function cautionJson(cautions: Cautions): readonly CautionEntry[] {
  return [
    ...cautions.hazards.map(hazardEntry),
    ...adviceEntries(cautions),
    ...questionEntries(cautions),
    deferralEntry,
  ];
}

/** The cautions of one step as data: what to do, this bench's numbers, its hazards, and who decides. */
export function stepJson({
  step,
  number,
  title,
  orders,
  numbers,
  hazards,
}: StepCautions): readonly CautionEntry[] {
  const lines = [
    ...orders.map((text) => [text, text] as const),
    ...numbers.map((text) => [text, ''] as const),
  ];
  return [
    ...lines.map(
      ([text, doNow], i): CautionEntry => ({
        ...plainEntry,
        kind: 'step',
        level: 'advice',
        id: `${step}-${i + 1}`,
        point: `step ${number}, ${title}`,
        quantity: 'none',
        text,
        doNow,
        evidence: 'proposal',
      }),
    ),
    ...hazards.map(hazardEntry),
    deferralEntry,
  ];
}

function adviceEntries({ walk, staysConnected }: Cautions): readonly CautionEntry[] {
  const perLine = lineSummaries(walk).flatMap((summary) => {
    const { line, treatedLike, eyewear, alignment } = summary;
    const common = {
      ...plainEntry,
      kind: 'advice',
      level: 'advice',
      wavelength_m: line.wavelength,
      invisible: !line.seen,
      power_W: line.power,
      assumed: line.assumed,
    } as const;
    const entries: CautionEntry[] = [
      {
        ...common,
        id: `class-${line.name}`,
        point: line.title,
        quantity: 'class it would be treated like',
        limitSet: treatedLike?.set ?? null,
        duration_s: treatedLike?.timeBase ?? null,
        text: classText(summary),
        evidence: treatedLike === null ? 'proposal' : weakestEvidence(treatedLike.basis),
        sources: treatedLike?.basis ?? [],
      },
    ];
    for (const { density, exposureTime, wording } of eyewear) {
      entries.push({
        ...common,
        id: `eyewear-${line.name}-${exposureTime}s`,
        point: line.title,
        quantity: 'optical density of eyewear',
        value: density.opticalDensity,
        unit: '1',
        limitSet: density.limit.set,
        duration_s: exposureTime,
        text: eyewearText(line, { density, exposureTime, wording }),
        evidence: weakestEvidence(density.basis),
        sources: density.basis,
      });
    }
    if (line.name === 'laser') {
      entries.push({
        ...common,
        id: 'alignment-power',
        point: line.title,
        quantity: 'power to align with, at most',
        value: alignment?.power.power ?? null,
        unit: 'W',
        limitSet: alignment?.power.set ?? null,
        duration_s: alignment?.power.exposureTime ?? null,
        text: alignmentText(alignment),
        evidence: weakestEvidence(alignment?.power.basis ?? []),
        sources: alignment?.power.basis ?? [],
      });
    }
    return entries;
  });
  return [
    ...perLine,
    ...(walk.launch.reference === null ? [] : [connectedEntry(staysConnected)]),
    afterExposureEntry,
  ];
}

const afterExposureEntry: CautionEntry = {
  ...plainEntry,
  kind: 'advice',
  level: 'advice',
  id: 'after-exposure',
  point: 'everywhere',
  quantity: 'none',
  text: afterExposure,
};

function connectedEntry({ whateverIsCoupled, asCoupledNow }: Cautions['staysConnected']): CautionEntry {
  return {
    ...plainEntry,
    kind: 'advice',
    level: 'advice',
    id: 'reference-stays-connected',
    point: 'reference source at the far end',
    quantity: 'laser power up to which it may stay connected',
    value: asCoupledNow ?? whateverIsCoupled,
    unit: 'W',
    limit: whateverIsCoupled,
    text:
      whateverIsCoupled === null
        ? 'What the reference source bears is not known: unplug it before the laser is switched on.'
        : 'It may stay connected up to this power of the laser, less as more light is coupled; the limit is for all of it coupled.',
    evidence: 'proposal',
  };
}

function questionEntries({ questions, walk }: Cautions): readonly CautionEntry[] {
  return questions.map((question) => {
    const open = isOpen(question, walk.answers);
    return {
      ...plainEntry,
      kind: 'question',
      level: 'ask',
      id: question.id,
      point: 'question',
      quantity: 'question',
      text: open ? `${question.asks} Until then ${question.untilThen}.` : question.asks,
      answers: question.examples,
      answered: walk.answers.heard.get(question.name) ?? null,
    };
  });
}
