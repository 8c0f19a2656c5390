import type { InstrumentKind } from '@coreward/contract';
import type { ComponentType } from 'react';
import { CameraMeter } from '../camera/camera-meter.tsx';
import type { PosterProps, SetupProps } from './kind-parts.ts';
import { EyePad, TypedForm } from './posting.tsx';
import { PracticeSetup } from './setup/practice-setup.tsx';
import { ReplaySetup } from './setup/replay-setup.tsx';
import { ScpiSetup } from './setup/scpi-setup.tsx';
import { SerialSetup } from './setup/serial-setup.tsx';
import { CameraSetup, EyeSetup, TypedSetup } from './setup/typed-setup.tsx';

interface KindParts {
  readonly Setup: ComponentType<SetupProps>;
  /** Null: its readings come from the station. */
  readonly Poster: ComponentType<PosterProps> | null;
  /** Whether its setup can be changed later on. */
  readonly changes: boolean;
}

/** The kinds that can be added on a page, in the order in which they are offered. */
export const kinds: Readonly<Partial<Record<InstrumentKind, KindParts>>> = {
  typed: { Setup: TypedSetup, Poster: TypedForm, changes: false },
  'by-eye': { Setup: EyeSetup, Poster: EyePad, changes: false },
  camera: { Setup: CameraSetup, Poster: CameraMeter, changes: false },
  'serial-line': { Setup: SerialSetup, Poster: null, changes: true },
  scpi: { Setup: ScpiSetup, Poster: null, changes: true },
  replay: { Setup: ReplaySetup, Poster: null, changes: false },
  practice: { Setup: PracticeSetup, Poster: null, changes: false },
};

/** Whether it opens a port or an address, which only the station's own computer may. */
export const opensSomething = (kind: InstrumentKind): boolean => kind === 'serial-line' || kind === 'scpi';

/** Whether its readings come from a page that need not be open, so that silence means nothing. */
export const isPosted = (kind: InstrumentKind): boolean =>
  kind === 'typed' || kind === 'by-eye' || kind === 'camera';
