import type { ConnectorName } from '@coreward/optics';
import type { Entry } from '../quantity/quantity.ts';

/** One laser, one path, one collimator, one fibre: what is (to be) on the bench. Every entry is SI. */
export interface Launch {
  readonly name: string;
  readonly laser: Laser;
  /** From the laser's exit to the collimator (or, without one, to the facet), in the order in which light meets it. */
  readonly path: readonly PathElement[];
  /** `null`: the beam as it is meets the facet at the end of the path. */
  readonly collimator: Collimator | null;
  readonly fibre: Fibre;
  /** Light sent backwards from the far end. */
  readonly reference: ReferenceSource | null;
  /** What stands at the far end; `null` is a bare end. */
  readonly output: { readonly collimator: OutputCollimator } | null;
  /** `null`: walked by hand, so the hand limit of these mounts is left. */
  readonly misalignment: Misalignment | null;
}

/** What sends the light. */
export interface Laser {
  readonly name: string | null;
  /** Vacuum wavelength, m. */
  readonly wavelength: Entry;
  /** W. */
  readonly power: Entry;
  readonly polarization: 'linear' | 'random';
  readonly beam: Beam;
}

/** The beam where it leaves the laser. */
export type Beam =
  /** One description serves both axes: they share one doubt. */
  | { readonly kind: 'round'; readonly axis: BeamAxis }
  /** x and y are known apart; `azimuth` (rad) turns the x axis from lab x counter-clockwise, seen along the light. */
  | { readonly kind: 'elliptic'; readonly x: BeamAxis; readonly y: BeamAxis; readonly azimuth: Entry };

/** One transverse axis. Diameters are 1/e² of intensity (D4σ for M² > 1); positions along the path from the laser's exit, downstream positive, m. */
export type BeamAxis =
  | {
      readonly kind: 'waist';
      readonly waistDiameter: Entry;
      readonly waistPosition: Entry;
      readonly quality: Entry;
    }
  /**
   * A diameter at a place, and the full 1/e² divergence (rad) of a beam that spreads there. Diameter times divergence
   * may lie below the 4M²λ/π of a waist, by up to one standard uncertainty of the two: then the waist is at `at`.
   */
  | {
      readonly kind: 'spread';
      readonly diameter: Entry;
      readonly at: Entry;
      readonly fullDivergence: Entry;
      readonly quality: Entry;
    }
  /**
   * A diameter at a place and nothing more: the waist is taken to be at the laser's exit. The square of the diameter
   * may lie below the 8M²λ·at/π that this needs at least, by up to its standard uncertainty.
   */
  | { readonly kind: 'diameter'; readonly diameter: Entry; readonly at: Entry; readonly quality: Entry };

/** What light meets between laser and collimator, in its order. */
export type PathElement =
  /** m. */
  | { readonly kind: 'space'; readonly length: Entry }
  | {
      readonly kind: 'mirror';
      readonly name: string;
      /** Angle of incidence, rad. */
      readonly angle: Entry;
      readonly reflectance: Entry;
      /** Diameter of the usable round face, m; `null`: not known, taken as large enough. */
      readonly clearAperture: Entry | null;
      /** `null`: fixed, without screws. */
      readonly mount: Mount | null;
    }
  /** A thin lens on the way, such as one of a telescope. m; negative if it diverges. */
  | {
      readonly kind: 'lens';
      readonly name: string;
      readonly focalLength: Entry;
      readonly clearAperture: Entry | null;
      readonly transmission: Entry;
    }
  /** A round hole. m. */
  | { readonly kind: 'stop'; readonly name: string; readonly diameter: Entry }
  /** Anything that only dims. */
  | { readonly kind: 'filter'; readonly name: string; readonly transmission: Entry };

/** A mirror's mount with two screws alike. */
export interface Mount {
  /** From the pivot to the screw's tip, m. */
  readonly lever: Entry;
  /** Advance a turn, m. */
  readonly pitch: Entry;
}

/** The lens before the facet, with what holds the fibre there. */
export interface Collimator {
  readonly name: string | null;
  /** m, at `designWavelength` or, where that is null, at the launch's own wavelength. */
  readonly focalLength: Entry;
  readonly designWavelength: Entry | null;
  /** Diameter, m; `null`: not known, taken as large enough. */
  readonly clearAperture: Entry | null;
  /** How the focal length follows the wavelength. `fixed` is an achromat or a mirror: it does not. */
  readonly focalShift: { readonly kind: 'glass'; readonly glass: string } | { readonly kind: 'fixed' };
  /** Glass-air surfaces and the fraction each one reflects; `null` reflectance: bare glass, by its index. */
  readonly surfaces: { readonly count: number; readonly reflectance: Entry | null };
  /** W040 in waves of the launch's light over the clear aperture; positive: marginal rays focus nearer the lens. */
  readonly sphericalAberration: Entry;
  readonly focus: FocusSetting;
  /** Advance of the focus thread a turn, m. */
  readonly focusThread: Entry | null;
  readonly connector: Connector | null;
}

/** How the distance from lens to fibre was set. */
export type FocusSetting =
  /** Adjusted for the most light in this launch. */
  | { readonly kind: 'best' }
  /** The fibre tip stands where light of this wavelength (m) leaves the lens collimated. */
  | { readonly kind: 'wavelength'; readonly wavelength: Entry }
  /** From the (thin) lens to the fibre tip, m. */
  | { readonly kind: 'distance'; readonly distance: Entry };

/** What a barrel takes or a fibre carries. */
export type Connector = ConnectorName;

/** How an end is polished or coated. */
export type FibreEnd = 'flat' | 'angled 8°' | 'coated';

/** The fibre from end to end. */
export interface Fibre {
  readonly name: string | null;
  /** The standard designation it was expanded from. */
  readonly type: string | null;
  readonly profile: 'step' | 'graded';
  readonly material: 'silica' | 'acrylic';
  /** False where neither the document nor its `type` says the material, and silica was taken. */
  readonly materialSaid: boolean;
  /** m. */
  readonly coreDiameter: Entry;
  /** √(n_core² − n_cladding²), on the axis if graded. */
  readonly numericalAperture: Entry;
  /** m. */
  readonly claddingDiameter: Entry;
  /** Whether the coating lets cladding light out (`strips`), keeps it in (`guides`), or nobody knows. */
  readonly coating: 'strips' | 'guides' | 'unknown';
  /** m. */
  readonly length: Entry;
  /** Power attenuation, nepers a metre (P = P₀ exp(−αz)); `null`: estimated for the wavelength. */
  readonly attenuation: Entry | null;
  readonly ends: { readonly in: FibreEnd; readonly out: FibreEnd };
  readonly connectors: {
    readonly in: Connector | null;
    readonly out: Connector | null;
    /** Joints on the way; each loss in nepers of power, −ln(transmission). */
    readonly between: readonly { readonly loss: Entry }[];
  };
  /** Radius in m; turns is a count and may be a fraction. */
  readonly bends: readonly { readonly radius: Entry; readonly turns: Entry }[];
}

/** Light sent backwards from the far end: vacuum wavelength in m, power in W. */
export interface ReferenceSource {
  readonly wavelength: Entry;
  readonly power: Entry;
  /** The most power that may reach it, W; `null`: unknown, so unplug it first. */
  readonly tolerates: Entry | null;
}

/** The lens behind the far end. */
export interface OutputCollimator {
  readonly focalLength: Entry;
  readonly designWavelength: Entry | null;
  readonly focalShift: Collimator['focalShift'];
  readonly surfaces: Collimator['surfaces'];
  readonly clearAperture: Entry | null;
  readonly focus: FocusSetting;
}

/** Beam relative to fibre at the facet; m and rad. Defocus is facet minus its focus position, downstream positive. */
export interface Misalignment {
  readonly offsetX: Entry;
  readonly offsetY: Entry;
  readonly tiltX: Entry;
  readonly tiltY: Entry;
  readonly defocus: Entry;
}
