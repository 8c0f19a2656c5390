import type { JSX } from 'react';
import { gaugeTexts } from '../../texts/gauge.ts';
import {
  Blade,
  Camera,
  Cards,
  Focus,
  Imaging,
  Part,
  Reverse,
  RulerAlong,
  Screw,
  Thread,
  TwoSpots,
} from './beam-drawings.tsx';
import {
  Body,
  Cell,
  Coil,
  Cone,
  CutBack,
  Diode,
  End,
  Joint,
  Levels,
  Patterns,
  Sweep,
} from './fibre-drawings.tsx';

type Drawing = keyof typeof gaugeTexts.drawings;

const drawings: Readonly<Record<Drawing, () => JSX.Element>> = {
  blade: Blade,
  camera: Camera,
  cards: Cards,
  focus: Focus,
  ruler: RulerAlong,
  part: Part,
  screw: Screw,
  twoSpots: TwoSpots,
  reverse: Reverse,
  imaging: Imaging,
  thread: Thread,
  cone: Cone,
  patterns: Patterns,
  sweep: Sweep,
  end: End,
  cutBack: CutBack,
  joint: Joint,
  coil: Coil,
  diode: Diode,
  cell: Cell,
  body: Body,
  levels: Levels,
};

const byGauge: Readonly<Record<string, Drawing>> = {
  'knife-edge': 'blade',
  'spot-picture': 'camera',
  'two-distances': 'cards',
  caustic: 'focus',
  ruler: 'ruler',
  'before-and-after': 'part',
  'screw-turns': 'screw',
  'card-offset': 'twoSpots',
  'far-wall-spot': 'reverse',
  'reverse-radius': 'reverse',
  'two-colour-focus': 'reverse',
  imaging: 'imaging',
  'thread-pitch': 'thread',
  'far-field-cone': 'cone',
  'far-field-profile': 'sweep',
  'core-picture': 'end',
  'mode-count': 'patterns',
  'cut-back': 'cutBack',
  substitution: 'joint',
  'cladding-light': 'coil',
  photodiode: 'diode',
  'solar-cell': 'cell',
  calorimeter: 'body',
  'camera-linearity': 'levels',
};

/** How a gauge stands on the bench; `small` beside a name that says it, too. */
export function GaugeDrawing({
  gauge,
  small = false,
}: {
  readonly gauge: string;
  readonly small?: boolean;
}): JSX.Element | null {
  const name = byGauge[gauge];
  if (name === undefined) return null;
  const Shown = drawings[name];
  if (small)
    return (
      <svg className="gauge-drawing small" viewBox="0 0 240 96" aria-hidden="true">
        <Shown />
      </svg>
    );
  return (
    <svg className="gauge-drawing" viewBox="0 0 240 96" role="img" aria-label={gaugeTexts.drawings[name]}>
      <Shown />
    </svg>
  );
}
