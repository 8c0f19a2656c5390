import type { Launch } from '../launch/launch.ts';
import { wavelengthText } from './limit-texts.ts';

/**
 * What the answers about a laser are kept under: its name in small letters and hyphens, or its wavelength where it has
 * none. The same laser in another launch has the same key.
 */
export function laserKey({ laser }: Pick<Launch, 'laser'>): string {
  const slug = slugOf(laser.name ?? '');
  return slug === '' ? `laser-${slugOf(wavelengthText(laser.wavelength.value))}` : slug;
}

/** Small letters, figures and hyphens. */
export function slugOf(text: string): string {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/gu, '');
}
