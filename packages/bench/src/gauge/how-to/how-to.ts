/** How one goes about a gauge. */
export interface HowTo {
  /** The gauge's name. */
  readonly gauge: string;
  readonly steps: readonly string[];
  /** What can hurt somebody or spoil a part, and what to do about it. */
  readonly cautions: readonly string[];
  /** A table that is read as it stands, of our own invention; null for a picture. */
  readonly example: string | null;
}
