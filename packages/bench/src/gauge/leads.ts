/** Where answers go that no document has a key for. */
export interface Lead {
  readonly words: string;
  /** The page of a launch that takes them; null: none does. */
  readonly page: 'steer' | null;
}

/**
 * Where a gauge leads whose answers no document has a key for, or what becomes of those that have none; null where
 * everything has its place. A test holds that no gauge leads nowhere.
 */
export function leadsElsewhere(gauge: string): Lead | null {
  const told = words[gauge];
  return told === undefined ? null : { words: told, page: gauge === 'card-offset' ? 'steer' : null };
}

const words: Readonly<Record<string, string>> = {
  'card-offset':
    'The offset is no property of a part: the steer of a launch takes it and says how far to turn which screw.',
  'screw-turns':
    'Slack and sense have no key: the steer learns them from the first turns on the two cards, and again each time.',
  'cladding-light':
    'The share is true for this fibre, launched like this: no key is filled. Take it off what the detector reads, or strip the cladding, and keep the readings in the bench book.',
  'camera-linearity':
    'It belongs to the camera, which is no part of a launch. Near 1, set the encoding of a picture to linear; near 0.45, to srgb.',
};
