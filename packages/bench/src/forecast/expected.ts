import type { Launch } from '../launch/launch.ts';

/** A value as the launch states it, and the interval that holds the truth with 90 % (central: 5 % below, 5 % above). SI. */
export interface Expected {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** What to expect of a launch, with its doubt. */
export interface Forecast {
  readonly launch: Launch;
  readonly fibre: ExpectedFibre;
  readonly facet: ExpectedSpot;
  readonly coupling: ExpectedCoupling;
  /** In the order in which light meets each loss. The values multiply to `output.fractionOfLaser`. */
  readonly ledger: readonly LedgerEntry[];
  /** What the fibre did not take, as fractions of the laser's power, at the stated values. */
  readonly notGuided: {
    /** Lost before the facet: mirrors, clips, lens surfaces. */
    readonly beforeFacet: number;
    /** Thrown back by the entry facet. */
    readonly reflected: number;
    /** In the cladding, just behind the facet. */
    readonly cladding: number;
    /** Past the cladding: ferrule, glue, air. */
    readonly beyondCladding: number;
  };
  /** What a power meter at the far end shows, W: guided light and the cladding light that gets there. */
  readonly meter: {
    readonly reading: Expected;
    readonly guided: Expected;
    readonly claddingReaches: boolean;
  };
  readonly tolerances: {
    readonly guided: Tolerances;
    readonly fundamental: Tolerances | null;
    /** Share lost to the finest turn of a hand at both screws of the near mirror: of LP01, and of all guided light. */
    readonly handLimit: number | null;
    readonly handLimitGuided: number | null;
  };
  readonly output: ExpectedOutput;
  readonly nextMeasurement: readonly Measurement[];
  /** What this launch ought to know about itself, most telling first. */
  readonly remarks: readonly Remark[];
  readonly cautions: readonly Caution[];
  /** What the forecast took for granted because the document does not say. */
  readonly assumptions: readonly string[];
}

/** What the fibre guides at this wavelength. */
export interface ExpectedFibre {
  readonly vNumber: Expected;
  /** LP_lm, and with cos and sin counted apart; null above V = 150. The range runs over the interval of V. */
  readonly lpModes: number | null;
  readonly modesWithOrientation: number | null;
  readonly lpModesRange: readonly [number, number] | null;
  /** Above it the fibre is single-moded, m. */
  readonly cutoffWavelength: number;
  /** Petermann II of LP01, m; null above V = 150. */
  readonly modeFieldDiameter: number | null;
  /** 1/e² diameter of the Gaussian that fits LP01 best, m. */
  readonly bestSpotDiameter: number | null;
}

/** The spot at the facet plane, lab axes, at the stated values. m. */
export interface ExpectedSpot {
  readonly spotDiameterX: number;
  readonly spotDiameterY: number;
  /** Waist minus facet; positive while the beam still converges at the facet. */
  readonly waistOffsetX: number;
  readonly waistOffsetY: number;
  readonly waistDiameterX: number;
  readonly waistDiameterY: number;
  /** Half angle at which the light arrives, 1/e² of intensity, the larger of the two axes; rad. */
  readonly halfAngle: number;
}

/** Fractions of the power that arrives at the facet plane: overlap only. */
export interface ExpectedCoupling {
  readonly guided: number;
  readonly fundamental: number | null;
  readonly bestGuided: number;
  /** Where `bestGuided` is aimed, m and rad at the facet; null: on the axis, as nearly always. */
  readonly bestGuidedAt: OffAxis | null;
  readonly bestFundamental: number | null;
  readonly guidedInterval: { readonly low: number; readonly high: number };
  readonly fundamentalInterval: { readonly low: number; readonly high: number } | null;
  /** How `guided` was computed. */
  readonly method: 'modes' | 'rays';
  /** In words, with the error to expect of the method. */
  readonly methodNote: string;
  /** Whether misalignment was written, or taken as what a hand leaves. */
  readonly aim: 'as written' | 'walked by hand';
}

/** An aim beside the axis of the fibre. */
export interface OffAxis {
  readonly offsetX: number;
  readonly offsetY: number;
  readonly tiltX: number;
  readonly tiltY: number;
}

/** Where on the way of the light an entry of the ledger belongs. */
export type LedgerGroup = 'path' | 'lens' | 'facet' | 'overlap' | 'fibre' | 'output';

/** One cause of loss and what it lets through. */
export interface LedgerEntry {
  /** `mirror-M1`, `clip-M1`, `lens-clip`, `lens-surfaces`, `entry-facet`, `beam-quality`, …: stable. */
  readonly id: string;
  readonly group: LedgerGroup;
  readonly label: string;
  /** At the stated values; an overlap entry may exceed 1. */
  readonly transmission: number;
  readonly low: number;
  readonly high: number;
  /** The power that is left behind it, W, 90 %; null where only the stated values were looked at. */
  readonly left: PowerRange | null;
}

/** W, 5 % below and 5 % above. */
export interface PowerRange {
  readonly low: number;
  readonly high: number;
}

/** What costs 1 dB, each alone and from its own optimum, the smallest over both axes and both signs; null: never. */
export interface Tolerances {
  /** m */
  readonly offsetFor1dB: number | null;
  /** rad */
  readonly tiltFor1dB: number | null;
  /** m */
  readonly defocusFor1dB: number | null;
  readonly screws: readonly ScrewTolerance[];
}

/** How far one screw may be off. */
export interface ScrewTolerance {
  readonly mirror: string;
  readonly axis: 'horizontal' | 'vertical';
  /** Turns of the screw; null: no turn that keeps the beam on the mirror does it. */
  readonly turnsFor1dB: number | null;
}

/** What leaves the far end. */
export interface ExpectedOutput {
  /** W of guided light that leaves the far end. */
  readonly power: Expected;
  readonly fractionOfLaser: Expected;
  /** 1/e² diameter at the bare end, or at the output lens, m. */
  readonly diameter: number;
  /** 1/e² full angle, rad. */
  readonly fullDivergence: number;
  readonly collimated: boolean;
  /** What the two describe: one mode's own shape, or second moments of a mixture. */
  readonly shape: 'mode' | 'second moments';
}

/** One unknown and what knowing it would do. */
export interface Measurement {
  /** The key of the entry, as in the launch document. */
  readonly quantity: string;
  /** The gauge that measures it. */
  readonly gauge: string;
  /** What to do, in one line. */
  readonly how: string;
  /** Interval width of the output power after over before. */
  readonly narrows: number;
}

/** One truth about this launch, in words. */
export interface Remark {
  readonly id: string;
  /** `limits`: this is what keeps light out. `change`: what to do about it. `know`: what would mislead you. */
  readonly kind: 'limits' | 'change' | 'know';
  readonly text: string;
}

/** What a forecast has to warn of, in one line. */
export interface Caution {
  readonly id: string;
  readonly level: string;
  readonly text: string;
}
