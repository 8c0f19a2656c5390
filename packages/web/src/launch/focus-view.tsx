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
      <ul className="legend">
        <li className="legend-spot">{words[0]}</li>
        <li className="legend-mode">{words[1]}</li>
        <li className="legend-core">{words[2]}</li>
      </ul>
    </section>
  );
}
