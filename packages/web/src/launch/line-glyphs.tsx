import { type DrawnPart, foldText, type LineDrawing } from '@coreward/bench';
import type { JSX } from 'react';
import { type Run, type ToPage, toPage } from './way.ts';

interface LineGlyphsProps {
  readonly drawing: LineDrawing;
  readonly chosen: string | null;
  readonly run: Run;
  readonly axis: number;
  readonly half: number;
  /** Where the labels begin, beside the axis. */
  readonly labelsAt: number;
}

/** Each part as a mark on the light, and the thread from it to its label. */
export function LineGlyphs({ drawing, chosen, run, axis, half, labelsAt }: LineGlyphsProps): JSX.Element {
  const at = toPage(run, axis);
  return (
    <>
      {drawing.parts.map((drawn) => (
        <g key={drawn.part.id} className={drawn.part.id === chosen ? 'glyph chosen' : 'glyph'}>
          <path className="thread" d={threadTo(drawn, half, labelsAt, at)} />
          <path className="mark" d={markOf(drawn, half, at)} />
          <Fold drawn={drawn} run={run} axis={axis} half={half} />
        </g>
      ))}
    </>
  );
}

/** By how much a mirror turns the light, beside its upper edge. */
function Fold({
  drawn: { part, along },
  run,
  axis,
  half,
}: Pick<LineGlyphsProps, 'run' | 'axis' | 'half'> & { readonly drawn: DrawnPart }): JSX.Element | null {
  const text = foldText(part);
  if (text === null) return null;
  return run === 'across' ? (
    <text className="fold" x={along - half * 0.3} y={axis - half * 0.8}>
      {text}
    </text>
  ) : (
    <text className="fold" x={2} y={along - half * 0.55}>
      {text}
    </text>
  );
}

/** From the part straight out of the light, then over to the label. */
function threadTo({ along, label }: DrawnPart, half: number, labelsAt: number, at: ToPage): string {
  const room = labelsAt - half;
  return `M${at(along, -half * 0.5)}L${at(along, -half - room * 0.15)}L${at(label, -half - room * 0.85)}L${at(label, -labelsAt)}`;
}

function markOf({ part, along }: DrawnPart, half: number, at: ToPage): string {
  const tall = half * 0.92;
  switch (part.kind) {
    case 'laser': {
      const body = 0.42 * half;
      return `M${at(0, body)}L${at(along, body)}L${at(along, -body)}L${at(0, -body)}Z`;
    }
    case 'mirror': {
      // a flat face, slanted as far as it folds the light
      const lean = tall * 0.42;
      return `M${at(along - lean, tall)}L${at(along + lean, -tall)}`;
    }
    case 'lens':
    case 'collimator': {
      const bulge = 0.11 * tall;
      return (
        `M${at(along, tall)}Q${at(along - 2 * bulge, 0)} ${at(along, -tall)}` +
        `Q${at(along + 2 * bulge, 0)} ${at(along, tall)}Z`
      );
    }
    case 'stop':
      return `M${at(along, tall)}L${at(along, 0.5 * tall)}M${at(along, -0.5 * tall)}L${at(along, -tall)}`;
    case 'filter':
      return `M${at(along - 3, tall)}L${at(along + 3, tall)}L${at(along + 3, -tall)}L${at(along - 3, -tall)}Z`;
    case 'facet':
    case 'far end': {
      const end = 0.3 * half;
      return `M${at(along, end)}L${at(along, -end)}`;
    }
    case 'fibre':
      return '';
  }
}
