import type { QuantityForm } from './form.ts';

/** `200 nm to 12 µm`, `above 0 mm, up to 1 m`: for key tables and schemas. */
export function rangeText({ lowest, highest }: QuantityForm): string {
  return lowest.included
    ? `${lowest.shows} to ${highest.shows}`
    : `above ${lowest.shows}, up to ${highest.shows}`;
}
