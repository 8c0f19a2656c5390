/** What the bench book keeps of a gauge: every raw reading, and what came of it. */
import type { Sheet } from './sheet.ts';

/** Which kinds of entries hold a gauge. */
export const gaugeEntryKind = 'gauge';
/** The readings of a gauge that are too long for one entry go before it, piece by piece. */
export const gaugePieceKind = 'gauge readings';

/** A gauge as its entry holds it. */
export interface KeptGauge {
  readonly gauge: string;
  /** For people: what came of it. */
  readonly text: string;
  readonly settings: Readonly<Record<string, string>>;
  /** The table as it was given; null where it lies in pieces. */
  readonly readings: string | null;
  /** Ids of the entries that hold its pieces, in order. */
  readonly pieces: readonly string[];
  /** Of a picture: its name, its bytes counted, and their SHA-256. */
  readonly picture: KeptPicture | null;
  /** Of a gauge that takes two pictures, the second. */
  readonly reversePicture: KeptPicture | null;
  /** Where the answer went: `“green module”, diameter of the beam`; null: nowhere yet. */
  readonly went: string | null;
}

export interface KeptPicture {
  readonly name: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** A text in pieces of at most so many characters each. */
export function piecesOf(text: string, most: number): readonly string[] {
  return Array.from({ length: Math.ceil(text.length / most) }, (_, i) =>
    text.slice(i * most, (i + 1) * most),
  );
}

/** What an entry's data says of a gauge; null where it is none. */
export function keptGauge(data: unknown): KeptGauge | null {
  if (typeof data !== 'object' || data === null) return null;
  const { gauge, text, settings, readings, pieces, picture, reversePicture, went } = data as Readonly<
    Record<string, unknown>
  >;
  if (typeof gauge !== 'string' || typeof text !== 'string') return null;
  return {
    gauge,
    text,
    settings: textsIn(settings),
    readings: typeof readings === 'string' ? readings : null,
    pieces: Array.isArray(pieces) ? pieces.filter((one) => typeof one === 'string') : [],
    picture: pictureIn(picture),
    reversePicture: pictureIn(reversePicture),
    went: typeof went === 'string' ? went : null,
  };
}

/** The sheet it was measured from; null where a piece is missing. */
export function sheetKept(kept: KeptGauge, pieceOf: (id: string) => string | null): Sheet | null {
  const pieces = kept.pieces.map(pieceOf);
  if (pieces.includes(null)) return null;
  return { settings: kept.settings, text: kept.readings ?? pieces.join('') };
}

function textsIn(value: unknown): Readonly<Record<string, string>> {
  if (typeof value !== 'object' || value === null) return {};
  return Object.fromEntries(
    Object.entries(value).filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
  );
}

function pictureIn(value: unknown): KeptPicture | null {
  if (typeof value !== 'object' || value === null) return null;
  const { name, bytes, sha256 } = value as Readonly<Record<string, unknown>>;
  return typeof name === 'string' && typeof bytes === 'number' && typeof sha256 === 'string'
    ? { name, bytes, sha256 }
    : null;
}
