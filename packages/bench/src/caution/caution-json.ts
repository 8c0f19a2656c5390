import { weakestEvidence } from '@coreward/optics';
import { type CautionEntry, deferralEntry, hazardEntry, plainEntry } from './caution-entry.ts';
import type { Cautions } from './cautions.ts';
import { isOpen } from './questions.ts';
import { afterExposure } from './standing-line.ts';
import type { StepCautions } from './step-cautions.ts';
import { lineSummaries } from './summary.ts';
import { alignmentText, classText, eyewearText } from './summary-texts.ts';

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
