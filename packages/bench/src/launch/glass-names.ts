import { glassNames as names } from '@coreward/optics';

/** Every material a lens may be made of, as it is written in a document. */
export const glassNames: readonly string[] = names;
