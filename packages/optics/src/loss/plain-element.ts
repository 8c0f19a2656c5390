import { OutOfRange } from '../out-of-range.ts';

/**
 * What goes straight through an element with so many equal surfaces, (1−R)^count. Light that bounces between the
 * surfaces leaves as a wide ghost and is lost to a fibre, so this is the figure for a launch.
 *
 * Valid without absorption in the glass.
 *
 * @param reflectance of each surface, fraction of power
 * @throws {OutOfRange} if the reflectance is no fraction or the count no whole number
 * @source each surface passes 1−R of what reaches it
 */
export function straightTransmission(reflectance: number, surfaceCount: number): number {
  mustBeSurfaces(reflectance, surfaceCount);
  return (1 - reflectance) ** surfaceCount;
}

/**
 * What a wide detector behind that element receives, ghosts included: all bounces summed as powers, without
 * interference. (1−R)/(1+(count−1)·R), hence (1−R)/(1+R) for a window.
 *
 * Valid without absorption and if the light's coherence is shorter than the element, or fringes average out.
 *
 * @throws {OutOfRange} if the reflectance is no fraction or the count no whole number
 * @source M. Born and E. Wolf, Principles of Optics, ch. 1 (pile of plates; from memory)
 */
export function transmissionWithGhosts(reflectance: number, surfaceCount: number): number {
  mustBeSurfaces(reflectance, surfaceCount);
  return surfaceCount === 0 ? 1 : (1 - reflectance) / (1 + (surfaceCount - 1) * reflectance);
}

function mustBeSurfaces(reflectance: number, surfaceCount: number): void {
  if (!(reflectance >= 0 && reflectance <= 1)) {
    throw new OutOfRange({
      where: 'reflectance',
      what: `${reflectance} is no fraction`,
      mend: 'Give a fraction from 0 to 1, such as 0.035 for bare silica.',
    });
  }
  if (!(Number.isInteger(surfaceCount) && surfaceCount >= 0)) {
    throw new OutOfRange({
      where: 'surfaceCount',
      what: `${surfaceCount} is no number of surfaces`,
      mend: 'Count the glass-air surfaces: 2 for a singlet.',
    });
  }
}
