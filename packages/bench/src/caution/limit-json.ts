import {
  type Basis,
  type Harm,
  type HazardEvidence,
  type LimitSet,
  listed,
  powerAtLimit,
  smallestCountedAngle,
  type Tissue,
  weakestEvidence,
} from '@coreward/optics';
import type { LimitAnswer } from './limit-answer.ts';
import { limitRemarks } from './limit-remarks.ts';
import { standingLine } from './standing-line.ts';

/** What one set says. */
export interface SetLimitJson {
  readonly set: LimitSet;
  readonly exposure_J_m2: number;
  readonly irradiance_W_m2: number;
  /** Diameter of the round stop the exposure is averaged over. */
  readonly averagingDiameter_m: number;
  /** The power through that stop that is just at the limit. */
  readonly powerAtLimit_W: number;
  readonly harm: Harm;
  readonly formula: string;
  /** Of the weakest source. */
  readonly evidence: HazardEvidence;
  readonly sources: readonly Basis[];
}

/** A limit as `coreward limit --json` prints it. SI. */
export interface LimitJson {
  readonly coreward: 1;
  readonly wavelength_m: number;
  readonly duration_s: number;
  /** As asked; where nothing was, the smallest that counts. */
  readonly angle_rad: number;
  readonly angleAssumed: boolean;
  readonly tissue: Tissue;
  readonly sets: readonly SetLimitJson[];
  /** The set with the lower limit; where both say the same, the newer one. */
  readonly governing: LimitSet;
  readonly bothTheSame: boolean;
  readonly estimate: true;
  readonly remarks: readonly string[];
  readonly caution: string;
}

/** A limit as data for scripts. */
export function limitJson(answer: LimitAnswer): LimitJson {
  const { exposure } = answer.question;
  return {
    coreward: 1,
    wavelength_m: exposure.wavelength,
    duration_s: exposure.exposureTime,
    angle_rad: exposure.sourceAngle ?? smallestCountedAngle,
    angleAssumed: exposure.sourceAngle === null,
    tissue: exposure.tissue,
    sets: listed(answer.both).map((limit) => ({
      set: limit.set,
      exposure_J_m2: limit.radiantExposure,
      irradiance_W_m2: limit.irradiance,
      averagingDiameter_m: limit.averagingDiameter,
      powerAtLimit_W: powerAtLimit(limit),
      harm: limit.harm,
      formula: limit.formula,
      evidence: weakestEvidence(limit.basis),
      sources: limit.basis,
    })),
    governing: answer.both.governing.set,
    bothTheSame: answer.both.isTie,
    estimate: true,
    remarks: limitRemarks(answer),
    caution: standingLine,
  };
}
