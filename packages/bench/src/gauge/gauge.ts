import type { Dimension } from '../units/dimension.ts';
import type { GaugeAnswer } from './answer.ts';
import type { Picture } from './picture.ts';

/** A column of readings that a gauge understands. */
export interface ColumnSpec {
  readonly name: string;
  /** `reading`: any unit in proportion to power, decibels included; only ratios count. */
  readonly dimension: Dimension | 'reading';
  readonly needed: boolean;
  /** Other headings it is known by, in small letters. */
  readonly otherNames?: readonly string[];
  readonly what: string;
}

/** One thing about the whole set of readings. */
export type SettingSpec = {
  readonly name: string;
  readonly needed: boolean;
  readonly otherNames?: readonly string[];
  readonly what: string;
} /** `example` where the usual one of its dimension would be far off. */ & (
  | { readonly dimension: Dimension; readonly example?: string }
  | {
      readonly dimension: 'word';
      readonly words: Readonly<Record<string, string>>;
    }
  /** Taken as it is written; the gauge reads it. */
  | { readonly dimension: 'text'; readonly example: string }
);

/** A setting as it was given; SI. */
export interface Setting {
  readonly value: number;
  /** Standard uncertainty; null where none was written. */
  readonly uncertainty: number | null;
}

/** What was read on the bench, by the names of the gauge's columns and settings; SI. */
export interface Readings {
  readonly columns: Readonly<Record<string, readonly number[]>>;
  readonly settings: Readonly<Record<string, Setting>>;
  readonly words: Readonly<Record<string, string>>;
  readonly picture: Picture | null;
  /** Of a gauge that takes two pictures, the second: the reverse beam's. */
  readonly reversePicture?: Picture | null;
}

/** Readings and the curve laid through them, to be drawn. */
export interface GaugeCurve {
  readonly title: string;
  readonly across: string;
  readonly up: string;
  /** The readings are the detector's own: in whose unit they are only their column says. */
  readonly ofDetector?: true;
  readonly x: readonly number[];
  readonly readings: readonly number[];
  /** At the readings. */
  readonly fit: readonly number[];
  /** The fit between the readings, from left to right; left out where it is straight. */
  readonly between?: { readonly x: readonly number[]; readonly fit: readonly number[] };
}

export interface GaugeResult {
  readonly answers: readonly GaugeAnswer[];
  /** What was noticed or taken for granted, in sentences. */
  readonly remarks: readonly string[];
  readonly curves: readonly GaugeCurve[];
}

/** A procedure that turns crude bench readings into quantities. */
export interface Gauge {
  readonly name: string;
  /** Other names it is called by. */
  readonly otherNames: readonly string[];
  readonly title: string;
  /** What it answers, for a list. */
  readonly answers: string;
  /** What one needs for it. */
  readonly needs: string;
  readonly takes: 'table' | 'picture' | 'two pictures';
  readonly columns: readonly ColumnSpec[];
  readonly settings: readonly SettingSpec[];
  /** @throws {Refusal} if the readings cannot be what the gauge asks for */
  readonly measure: (readings: Readings) => GaugeResult;
}
