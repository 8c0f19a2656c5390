import { brightness, type DrawnSection, type LineDrawing } from '@coreward/bench';
import { type JSX, memo } from 'react';
import { outline, type Run, toPage, type Veil } from './way.ts';

interface LineLightProps {
  readonly drawing: LineDrawing;
  readonly run: Run;
  readonly axis: number;
  readonly veils: readonly Veil[];
}

/** The light itself: as wide as the beam is drawn, fading to its edge, dimmer behind each part that takes some. */
export function LineLight({ drawing, run, axis, veils }: LineLightProps): JSX.Element {
  return (
    <>
      <g className="light">
        {drawing.sections.map((section) => (
          <Section key={section.id} {...{ section, run, axis, veils }} />
        ))}
      </g>
      <Strand {...drawing.fibre} run={run} axis={axis} />
    </>
  );
}

interface SectionProps extends Omit<LineLightProps, 'drawing'> {
  readonly section: DrawnSection;
}

/** What a hand does not move is neither written nor painted again. */
const Section = memo(function Section({ section, run, axis, veils }: SectionProps): JSX.Element {
  const { points, left } = section;
  const at = toPage(run, axis);
  return (
    <>
      {veils.map(({ share, opacity }) => (
        <path key={share} d={outline(points, share, at)} fillOpacity={opacity * brightness(left)} />
      ))}
    </>
  );
}, looksTheSame);

function looksTheSame(before: SectionProps, now: SectionProps): boolean {
  const points = before.section.points;
  return (
    before.run === now.run &&
    before.axis === now.axis &&
    before.veils === now.veils &&
    before.section.left === now.section.left &&
    points.length === now.section.points.length &&
    now.section.points.every(({ along, above, below }, i) => {
      const was = points[i];
      return was !== undefined && was.along === along && was.above === above && was.below === below;
    })
  );
}

/** The fibre: a strand with a loop, for it is drawn short; what it loses on its way it loses in the middle. */
const Strand = memo(function Strand({
  from,
  to,
  arriving,
  leaving,
  run,
  axis,
}: LineDrawing['fibre'] & Pick<LineLightProps, 'run' | 'axis'>): JSX.Element {
  const at = toPage(run, axis);
  const middle = (from + to) / 2;
  const radius = ((to - from) / 5).toFixed(1);
  const turn = run === 'across' ? `a${radius} ${radius} 0 1 0 0.1 0` : `a${radius} ${radius} 0 1 1 0 0.1`;
  const first = `M${at(from, 0)}L${at(middle, 0)}`;
  const second = `M${at(middle, 0)}${turn}L${at(to, 0)}`;
  return (
    <>
      <path className="strand" d={first + second} />
      <path className="strand-light" strokeOpacity={brightness(arriving)} d={first} />
      <path className="strand-light" strokeOpacity={brightness(leaving)} d={second} />
    </>
  );
});
