import { planRaster, rasterDrawing, type SteerPlan, type SteerStep } from '@coreward/bench';
import type { JSX } from 'react';
import { steerTexts } from '../texts/steer.ts';

/** The path of the search: what was passed, the line to turn now, and what is left. */
export function RasterView({
  plan,
  step,
}: {
  readonly plan: SteerPlan;
  readonly step: SteerStep & { readonly kind: 'raster' };
}): JSX.Element {
  const { lines } = rasterDrawing(planRaster(plan.raster, step.boxes));
  const here = step.move.do === 'line' ? step.move.line : step.move.do === 'corner' ? -1 : lines.length;
  return (
    <figure className="steer-raster">
      <svg viewBox="0 0 100 100" role="img" aria-label={steerTexts.searchLabel}>
        {lines.map(({ x1, x2, y }, line) => (
          <line
            key={y}
            {...{ x1, x2 }}
            y1={y}
            y2={y}
            className={line < here ? 'line-passed' : line === here ? 'line-now' : 'line-left'}
          />
        ))}
      </svg>
      <figcaption>
        {steerTexts.search}
        {step.move.do === 'line' && `: ${steerTexts.searchAt(step.move.line + 1, step.lines)}`}
      </figcaption>
      <progress
        max={step.lines}
        value={step.move.do === 'line' ? step.move.line : step.move.do === 'back' ? step.lines : 0}
        aria-label={steerTexts.search}
      />
    </figure>
  );
}
