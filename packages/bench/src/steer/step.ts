import type { Quantity } from '../quantity/quantity.ts';
import type { Screw } from '../walk/step.ts';
import type { Offsets } from './exact-turns.ts';
import type { RasterMove } from './raster.ts';
import type { WentTo } from './senses.ts';

/** One thing that a steer asks of hand and eye. Turns are signed by the screw's learned sense. */
export type SteerStep =
  /** Turn a screw a quarter turn, any way; that way is + from now on. Which way does the spot go? */
  | { readonly kind: 'sense'; readonly screw: Screw }
  /** Read how far the forward spot lies from the reverse one on both cards. */
  | { readonly kind: 'offsets'; readonly pass: number }
  | {
      readonly kind: 'turn';
      readonly screw: Screw;
      readonly turns: Quantity;
      /** The screw went the other way last: nothing happens at first. */
      readonly reverses: boolean;
    }
  /** Reverse light off, laser on at alignment power: is there light at the far end? */
  | { readonly kind: 'light' }
  | { readonly kind: 'raster'; readonly boxes: 1 | 2; readonly move: RasterMove; readonly lines: number };

/** What is answered. */
export type SteerAnswer =
  | { readonly outcome: 'went'; readonly to: WentTo }
  | {
      readonly outcome: 'read';
      readonly offsets: Offsets;
      /** Standard uncertainty of these offsets, one axis, m; left out: as it was said of the cards. */
      readonly readingError?: number;
    }
  | { readonly outcome: 'did' }
  | { readonly outcome: 'light' }
  | { readonly outcome: 'dark' };

/** Something noticed: an offset grew twice running. */
export interface SteerRemark {
  readonly id: 'grows';
  readonly card: 'near' | 'far';
  readonly axis: 'horizontal' | 'vertical';
}

/** A step, and what was noticed before it. */
export interface SteerAsk {
  readonly step: SteerStep;
  readonly remarks: readonly SteerRemark[];
}

/** How a steer ended: light where the spots lay over each other, found by the raster, or not at all. */
export type SteerVerdict = 'light' | 'found' | 'dark';

/** A steer as a procedure: pure, without clock and chance, so that its answers are the whole of a session. */
export type SteerProcedure = Generator<SteerAsk, SteerVerdict, SteerAnswer>;

/** Whether an answer is one to this step. */
export function answers(step: SteerStep, { outcome }: SteerAnswer): boolean {
  switch (step.kind) {
    case 'sense':
      return outcome === 'went';
    case 'offsets':
      return outcome === 'read';
    case 'turn':
      return outcome === 'did';
    case 'light':
      return outcome === 'light' || outcome === 'dark';
    case 'raster':
      return step.move.do === 'line' ? outcome === 'light' || outcome === 'dark' : outcome === 'did';
  }
}
