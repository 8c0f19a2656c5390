import { type FocusPicture, focusText, unbroken } from '@coreward/bench';
import type { JSX } from 'react';
import { launchTexts } from '../texts/launch.ts';

/** Half the side of the drawing, in its own units. */
const side = 100;

/** The facet face on: the core, the mode that waits, and the spot that arrives, to one scale. */
export function FocusView({ focus }: { readonly focus: FocusPicture }): JSX.Element {
  const { spotRadiusX, spotRadiusY, offsetX, offsetY, coreRadius, suitedRadius, half } = focus;
  const px = (metres: number) => (metres / half) * side;
  const words = focusText(focus).map(unbroken);
  return (
    <section className="focus">
      <h2>{launchTexts.focus}</h2>
      <svg viewBox={`${-side} ${-side} ${2 * side} ${2 * side}`} role="img" aria-label={words.join(' ')}>
        <defs>
          <radialGradient id="spot-light">
            {[0, 0.2, 0.4, 0.6, 0.8, 1].map((at) => (
              <stop
                key={at}
                offset={at}
                style={{ stopColor: 'var(--accent)', stopOpacity: Math.exp(-2 * (1.5 * at) ** 2) }}
              />
            ))}
          </radialGradient>
        </defs>
        <circle className="core" r={px(coreRadius)} />
        <ellipse
          fill="url(#spot-light)"
          cx={px(offsetX)}
          cy={-px(offsetY)}
          rx={1.5 * px(spotRadiusX)}
          ry={1.5 * px(spotRadiusY)}
        />
        <ellipse
          className="spot-edge"
          cx={px(offsetX)}
          cy={-px(offsetY)}
          rx={px(spotRadiusX)}
          ry={px(spotRadiusY)}
        />
        <circle className="mode-edge" r={px(suitedRadius)} />
      </svg>
      <FocusFromTheSide focus={focus} scale={px(1)} />
      <p className="line-note">{launchTexts.focusSeen}</p>
      <ul className="legend">
        <li className="legend-spot">{words[0]}</li>
        <li className="legend-mode">{words[1]}</li>
        <li className="legend-core">{words[2]}</li>
      </ul>
    </section>
  );
}

/** The same focus from the side: the light comes from the left, the core begins at the facet. Along it is not to scale. */
function FocusFromTheSide({
  focus: { edge, reach, coreRadius, suitedRadius },
  scale,
}: {
  readonly focus: FocusPicture;
  readonly scale: number;
}): JSX.Element | null {
  if (edge.length === 0) return null;
  const lane = 0.6;
  const across = (metres: number) => Math.min(lane * side, lane * metres * scale);
  const along = (position: number) => -side + (1 + position / reach) * side;
  const at = (x: number, y: number) => `${x.toFixed(1)} ${y.toFixed(1)}`;
  const above = edge.map(({ position, radiusX }) => at(along(position), -across(radiusX)));
  const below = edge.map(({ position, radiusY }) => at(along(position), across(radiusY))).reverse();
  const core = across(coreRadius);
  const mode = across(suitedRadius);
  return (
    <svg viewBox={`${-side} ${-lane * side} ${2 * side} ${2 * lane * side}`} aria-hidden="true">
      <rect className="core" x="0" y={-core} width={side} height={2 * core} />
      <path className="side-light" d={`M${above.join('L')}L${below.join('L')}Z`} />
      <path className="mode-edge" d={`M0 ${-mode}H${side}M0 ${mode}H${side}`} />
      <path className="facet-edge" d={`M0 ${-lane * side}V${lane * side}`} />
    </svg>
  );
}
