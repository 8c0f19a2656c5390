import type { Basis, LimitSet } from '@coreward/optics';

/**
 * How much a hazard asks of you, worst first. Words, never a colour alone.
 *
 * - `not evaluated`: outside what this tool covers; for people it counts as the worst, for parts it stands behind all
 *   that is above a limit
 * - `severe`: ten times its limit or more, or a source that would be lost
 * - `serious`: above its limit
 * - `mind`: no limit says it; it happens all the same
 * - `under the limit`: computed, and below the limit for the time assumed
 */
export const cautionLevels = ['not evaluated', 'severe', 'serious', 'mind', 'under the limit'] as const;
export type CautionLevel = (typeof cautionLevels)[number];

/** Who or what can be hurt, gravest first. */
export const atRiskWords = ['eye', 'other people', 'skin', 'source', 'facet'] as const;
export type AtRisk = (typeof atRiskWords)[number];

/** Where on the line of light. Positions in metres from the laser's exit along the light, the fibre included. */
export interface HazardPlace {
  readonly part: 'laser' | 'path' | 'collimator' | 'fibre' | 'output' | 'reference' | 'bench';
  /** Index in `launch.path`, or of the joint or bend in the fibre; `null` for a part there is one of. */
  readonly index: number | null;
  readonly from: number;
  /** The same as `from` at a point. */
  readonly to: number;
}

/** What the numbers come to for the power and sizes exactly as written, with nothing added for what is not known. */
export interface AsWritten {
  /** W. */
  readonly power: number;
  /** m. */
  readonly hazardDistance: number;
}

/** The same beam judged for another time. */
export interface AnotherTime {
  /** s. */
  readonly exposureTime: number;
  /** m. */
  readonly hazardDistance: number;
  /** What must stand beside it. */
  readonly wording: string;
}

/** What 100 s come to, where they are allowed less than the caution's own time: blue light, and pulses. */
export interface ForLonger {
  /** s. */
  readonly exposureTime: number;
  /** m; `null`: no distance applies. */
  readonly hazardDistance: number | null;
  readonly timesLimit: number;
  readonly limitSet: LimitSet;
}

/** One hazard of this bench. An estimate. */
export interface Hazard {
  readonly id: string;
  /** The place in words. */
  readonly point: string;
  readonly place: HazardPlace;
  readonly level: CautionLevel;
  readonly atRisk: readonly AtRisk[];
  /** What `value` and `limit` are; `null` where nothing is computed. */
  readonly quantity: string;
  readonly value: number | null;
  /** Of `value` and `limit`: `W/m²`, `W`, `1`. */
  readonly unit: 'W/m²' | 'W' | '1' | null;
  readonly limit: number | null;
  readonly limitSet: LimitSet | null;
  /** The time the limit is for, s. */
  readonly exposureTime: number | null;
  /** Up to where it is above the limit, m; 0: nowhere; `null`: no distance applies. */
  readonly hazardDistance: number | null;
  /** What the distance counts from: `the exit`, `the fibre end`. */
  readonly from: string | null;
  /** `value` over `limit`. */
  readonly timesLimit: number | null;
  /** Vacuum wavelength of the light, m. */
  readonly wavelength: number | null;
  /** Whether it is light that nobody sees. */
  readonly invisible: boolean;
  /** W that are counted at this place. */
  readonly power: number | null;
  readonly asWritten: AsWritten | null;
  readonly otherTimes: readonly AnotherTime[];
  /** Counts for the level; `null` where the time makes no difference. */
  readonly longer: ForLonger | null;
  /** What it is, in one line. */
  readonly what: string;
  /** What to do now: short and imperative. */
  readonly doNow: string;
  /** With which set, time, wavelength and beam definition. */
  readonly fine: string;
  /** What was taken for granted because it is not known. */
  readonly assumed: readonly string[];
  readonly basis: readonly Basis[];
}

/** What a hazard has to say of limits and distances where none was computed. */
export const withoutNumbers = {
  value: null,
  unit: null,
  limit: null,
  limitSet: null,
  exposureTime: null,
  hazardDistance: null,
  from: null,
  timesLimit: null,
  asWritten: null,
  otherTimes: [],
  longer: null,
} as const satisfies Partial<Hazard>;

/** The same of what ought to have numbers, and nobody here can compute them. */
export const withoutVerdict = {
  ...withoutNumbers,
  level: 'not evaluated',
  quantity: 'not evaluated',
} as const satisfies Partial<Hazard>;

/** All of a hazard in one text: what it is, what to do, and what the numbers stand for. */
export function hazardText({ what, doNow, fine }: Pick<Hazard, 'what' | 'doNow' | 'fine'>): string {
  return [what, doNow, fine].filter((part) => part !== '').join(' ');
}

/** How many times a limit is severe. @source our proposal */
export const severeFrom = 10;

/** The level of what is so many times its limit. */
export function levelFor(timesLimit: number): CautionLevel {
  if (timesLimit >= severeFrom) return 'severe';
  return timesLimit > 1 ? 'serious' : 'under the limit';
}

/** The worse of two levels. */
export function worseLevel(a: CautionLevel, b: CautionLevel): CautionLevel {
  return cautionLevels.indexOf(a) <= cautionLevels.indexOf(b) ? a : b;
}

/**
 * The worst first: by level, people before parts, then by who is hurt, by how far it reaches, by how much it is, each for
 * the time that comes to more. What nobody evaluated of a part never stands before an eye that is above its limit.
 */
export function byGravity(a: Hazard, b: Hazard): number {
  return (
    levelRank(a) - levelRank(b) ||
    gravest(a) - gravest(b) ||
    farthest(b) - farthest(a) ||
    mostTimes(b) - mostTimes(a)
  );
}

/** Whether it is said of a part only, and can hurt no one. */
export const isOfParts = ({ atRisk }: Pick<Hazard, 'atRisk'>): boolean =>
  atRisk.every((one) => one === 'source' || one === 'facet');

const levelRank = (hazard: Hazard): number =>
  hazard.level === 'not evaluated' && isOfParts(hazard)
    ? cautionLevels.indexOf('serious') + 0.5
    : cautionLevels.indexOf(hazard.level);

const farthest = ({ hazardDistance, longer }: Hazard): number =>
  Math.max(hazardDistance ?? 0, longer?.hazardDistance ?? 0);

const mostTimes = ({ timesLimit, longer }: Hazard): number =>
  Math.max(timesLimit ?? 0, longer?.timesLimit ?? 0);

const gravest = ({ atRisk }: Hazard): number =>
  Math.min(...atRisk.map((one) => atRiskWords.indexOf(one)), atRiskWords.length);

/** Beyond this a beam meets people who are not at the bench, m. @source our proposal */
export const beyondTheBench = 1.5;
