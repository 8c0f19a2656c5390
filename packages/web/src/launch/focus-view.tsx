import { type FocusPicture, focusText } from '@coreward/bench';
import type { JSX } from 'react';
import { launchTexts } from '../texts/launch.ts';

/** Half the side of the picture, in its own units. */
const half = 100;

/** The facet face on: the core, the mode that waits, and the spot that arrives, to one scale. */
export function FocusView({ focus }: { readonly focus: FocusPicture }): JSX.Element {
  const { spotRadiusX, spotRadiusY, offsetX, offsetY, coreRadius, suitedRadius } = focus;
  const widest = 1.35 * Math.max(coreRadius, suitedRadius, spotRadiusX, spotRadiusY);
  const px = (metres: number) => (metres / widest) * half;
  const words = focusText(focus);
  return (
    <section className="focus">
      <h2>{launchTexts.focus}</h2>
      <svg viewBox={`${-half} ${-half} ${2 * half} ${2 * half}`} role="img" aria-label={words.join(' ')}>
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
  const across = (metres: number) => Math.min(lane * half, lane * metres * scale);
  const along = (position: number) => -half + (1 + position / reach) * half;
  const above = edge.map(({ position, radiusX }) => `${along(position)} ${-across(radiusX)}`);
  const below = edge.map(({ position, radiusY }) => `${along(position)} ${across(radiusY)}`).reverse();
  const core = across(coreRadius);
  const mode = across(suitedRadius);
  return (
    <svg viewBox={`${-half} ${-lane * half} ${2 * half} ${2 * lane * half}`} aria-hidden="true">
      <rect className="core" x="0" y={-core} width={half} height={2 * core} />
      <path className="side-light" d={`M${above.join('L')}L${below.join('L')}Z`} />
      <path className="mode-edge" d={`M0 ${-mode}H${half}M0 ${mode}H${half}`} />
      <path className="facet-edge" d={`M0 ${-lane * half}V${lane * half}`} />
    </svg>
  );
}
