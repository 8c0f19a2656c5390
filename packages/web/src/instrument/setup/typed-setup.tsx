import { type JSX, useEffect, useState } from 'react';
import { instrumentTexts } from '../../texts/instrument.ts';
import type { SetupProps } from '../kind-parts.ts';
import { Choice } from './choice.tsx';

const units = ['W', 'V', 'A', 'relative'] as const;

/** What a meter that is read off counts in. */
export function TypedSetup({ onSetup }: SetupProps): JSX.Element {
  const [unit, setUnit] = useState<(typeof units)[number]>('W');
  useEffect(() => onSetup({ kind: 'typed', unit }), [onSetup, unit]);
  const { add } = instrumentTexts;
  return (
    <Choice label={add.unit} value={unit} values={units} words={(one) => add.units[one]} onChange={setUnit} />
  );
}

/** A camera is chosen where it is opened. */
export function CameraSetup({ onSetup }: SetupProps): null {
  useEffect(() => onSetup({ kind: 'camera' }), [onSetup]);
  return null;
}

/** An eye needs nothing. */
export function EyeSetup({ onSetup }: SetupProps): null {
  useEffect(() => onSetup({ kind: 'by-eye' }), [onSetup]);
  return null;
}
