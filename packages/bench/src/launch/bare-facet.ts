import { OutOfRange, rayleighRange } from '@coreward/optics';
import { asStated } from '../forecast/draw.ts';
import { wayToTheLens } from '../forecast/way-to-the-facet.ts';
import type { Launch, PathElement } from './launch.ts';
import { placeShare } from './waist-place.ts';

/**
 * A launch whose beam meets a bare facet, with the usual doubt of its last distances drawn in: whoever puts a facet into a
 * focus moves it until light goes in, and so knows the place far better than by a ruler. Bare `space` entries behind the
 * last lens of the path are doubted by no more than a quarter of the Rayleigh range of the beam that arrives.
 */
export function withBareFacet(launch: Launch): Launch {
  if (launch.collimator !== null) return launch;
  const most = placeShare * arrivingRange(launch);
  const lastLens = launch.path.findLastIndex(({ kind }) => kind === 'lens');
  const drawnIn = (element: PathElement, i: number): PathElement => {
    if (element.kind !== 'space' || i < lastLens || element.length.defaulted !== 'uncertainty')
      return element;
    const { length } = element;
    return length.uncertainty > most
      ? { ...element, length: { ...length, uncertainty: most, shape: 'normal' } }
      : element;
  };
  return { ...launch, path: launch.path.map(drawnIn) };
}

/** The smaller Rayleigh range of the two axes at the end of the path, m. */
function arrivingRange(launch: Launch): number {
  try {
    const { beam } = wayToTheLens(launch, asStated);
    return Math.min(rayleighRange(beam.x), rayleighRange(beam.y));
  } catch (error) {
    // no such beam: the forecast says why
    if (error instanceof OutOfRange) return Number.POSITIVE_INFINITY;
    throw error;
  }
}
