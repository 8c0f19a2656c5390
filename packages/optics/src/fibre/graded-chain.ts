/**
 * The radial equation of the truncated parabola, R'' + R'/ρ + (u² − V²ρ² − l²/ρ²)R = 0 for ρ < 1, solved by a chain of
 * Taylor series in s = ρ²:
 *
 *     4s²R_ss + 4sR_s + P(s)R = 0,   P = u²s − V²s² − l².
 *
 * The closed form (Kummer's function) loses all its digits above V ≈ 30, for its terms reach e^V; this does not. One
 * chain runs outward from the axis to a joint, one inward from the core's edge; each grows the way it is run, so
 * neither loses the solution that is wanted. The joint is the outer turning point, where P changes sign.
 */
export interface GradedChain {
  /** Pieces of the outward run, from the axis on; then those of the inward run, from the edge on. */
  readonly centres: Float64Array;
  /** Signed length of each piece; its variable t runs from 0 at the centre to 1. */
  readonly lengths: Float64Array;
  /** `terms` coefficients of powers of t, piece after piece. Piece 0 lacks the factor (s/length)^(l/2). */
  readonly coefficients: Float64Array;
  outward: number;
  inward: number;
  joint: number;
  /** R at the end of the piece expanded last. */
  endValue: number;
  /** R, dR/ds at the joint, and zeros passed, of the outward run. */
  outwardValue: number;
  outwardSlope: number;
  outwardZeros: number;
  /** The same of the inward run, which starts with R = 1 at the edge. */
  inwardValue: number;
  inwardSlope: number;
  inwardZeros: number;
}

/** Powers of t kept: pieces are so short that the rest is below 1e-16. */
const terms = 30;

/** (2n + 1)/(n + 2), 1/((n + 1)(n + 2)) and n²/((n + 1)(n + 2)): a division each would be half the work. */
const slopeFactor = Float64Array.from({ length: terms }, (_, n) => (2 * n + 1) / (n + 2));
const valueFactor = Float64Array.from({ length: terms }, (_, n) => 1 / ((n + 1) * (n + 2)));
const squareFactor = Float64Array.from({ length: terms }, (_, n) => (n * n) / ((n + 1) * (n + 2)));

/**
 * Phase (or growth exponent) that a piece may cover, rad. Below π, so that a piece holds at most one zero; from 2.4 on
 * the powers left out begin to show.
 */
const phasePerPiece = 1.8;

/** Room for a chain of any mode up to this V; the phase across the core is at most πV/4. */
export function roomForChain(vNumber: number): GradedChain {
  const pieces = 160 + Math.ceil(3 * vNumber);
  return {
    centres: new Float64Array(pieces),
    lengths: new Float64Array(pieces),
    coefficients: new Float64Array(pieces * terms),
    outward: 0,
    inward: 0,
    joint: 1.5,
    endValue: 0.5,
    outwardValue: 0.5,
    outwardSlope: 0.5,
    outwardZeros: 0,
    inwardValue: 0.5,
    inwardSlope: 0.5,
    inwardZeros: 0,
  };
}

/** @param edgeSlope dR/dρ over R that the cladding asks for at the core's edge */
export function runChain(chain: GradedChain, l: number, vNumber: number, u: number, edgeSlope: number): void {
  chain.joint = jointFor(l, vNumber, u);
  startAtAxis(chain, l, vNumber, u);
  let s = chain.lengths[0]!;
  chain.outwardZeros = 0; // piece 0 ends before the first zero of J_l(2√(l + 1))
  let piece = 1;
  while (s < chain.joint) {
    const length = Math.min(pieceLength(l, vNumber, u, s, 1), chain.joint - s);
    const before = chain.outwardValue;
    chain.outwardSlope = expand(chain, piece, l, vNumber, u, s, length, before, chain.outwardSlope);
    chain.outwardValue = chain.endValue;
    if (before * chain.outwardValue < 0) chain.outwardZeros++;
    s = chain.joint - s - length < 1e-12 * s ? chain.joint : s + length;
    piece++;
  }
  chain.outward = piece;
  s = 1;
  chain.inwardValue = 1;
  chain.inwardSlope = edgeSlope / 2; // ds = 2ρ dρ
  chain.inwardZeros = 0;
  while (s > chain.joint) {
    const length = -Math.min(pieceLength(l, vNumber, u, s, -1), s - chain.joint);
    const before = chain.inwardValue;
    chain.inwardSlope = expand(chain, piece, l, vNumber, u, s, length, before, chain.inwardSlope);
    chain.inwardValue = chain.endValue;
    if (before * chain.inwardValue < 0) chain.inwardZeros++;
    s = s + length - chain.joint < 1e-12 ? chain.joint : s + length;
    piece++;
  }
  chain.inward = piece - chain.outward;
}

/** The outer turning point, or the edge where the light oscillates up to it, or the bottom of the well where it nowhere does. */
function jointFor(l: number, vNumber: number, u: number): number {
  const discriminant = u ** 4 - 4 * vNumber ** 2 * l ** 2;
  const bottom = l / vNumber;
  const turning = (u * u + Math.sqrt(Math.max(discriminant, 0))) / (2 * vNumber ** 2);
  return Math.min(1, Math.max(turning, bottom, 1 / vNumber));
}

/** Piece 0: R = (s/length)^(l/2)·G, G a power series in s, which alternates and so may only run to where its terms are still of order 1. */
function startAtAxis(chain: GradedChain, l: number, vNumber: number, u: number): void {
  const length = Math.min((4 * (l + 1)) / (u * u), (2 * (l + 1)) / vNumber, chain.joint);
  const { coefficients } = chain;
  chain.centres[0] = 0;
  chain.lengths[0] = length;
  const a = (u * u * length) / 4;
  const b = (vNumber * length) ** 2 / 4;
  let value = 0;
  let slope = 0;
  for (let k = 0; k < terms; k++) {
    const term =
      k === 0 ? 1 : -(a * coefficients[k - 1]! - (k > 1 ? b * coefficients[k - 2]! : 0)) / (k * (k + l));
    coefficients[k] = term;
    value += term;
    slope += k * term;
  }
  chain.outwardValue = value;
  chain.outwardSlope = (slope + (l / 2) * value) / length;
}

/** No longer than a quarter of the way to the axis, the equation's singular point, and than `phasePerPiece` allows. */
function pieceLength(l: number, vNumber: number, u: number, s: number, direction: 1 | -1): number {
  const first = Math.min(s / 4, phaseLimit(l, vNumber, u, s));
  return Math.min(first, Math.max(phaseLimit(l, vNumber, u, s + direction * first), first / 3));
}

function phaseLimit(l: number, vNumber: number, u: number, s: number): number {
  return (2 * phasePerPiece * s) / Math.sqrt(Math.abs(u * u * s - (vNumber * s) ** 2 - l * l) + 1e-300);
}

/**
 * The Taylor coefficients about s0, times powers of the piece's length. Leaves R at its end in `chain.endValue` and
 * returns dR/ds there.
 */
function expand(
  chain: GradedChain,
  piece: number,
  l: number,
  vNumber: number,
  u: number,
  s0: number,
  length: number,
  value: number,
  slope: number,
): number {
  const { coefficients } = chain;
  chain.centres[piece] = s0;
  chain.lengths[piece] = length;
  const ratio = length / s0;
  const square = ratio * ratio;
  const p0 = (square * (u * u * s0 - (vNumber * s0) ** 2 - l * l)) / 4;
  const p1 = (square * length * (u * u - 2 * vNumber ** 2 * s0)) / 4;
  const p2 = -((square * length * length * vNumber ** 2) / 4);
  const at = piece * terms;
  let c0 = value;
  let c1 = slope * length;
  let beforeLast = 0;
  let last = 0;
  let endValue = c0 + c1;
  let endSlope = c1;
  coefficients[at] = c0;
  coefficients[at + 1] = c1;
  for (let n = 0; n + 2 < terms; n++) {
    const next = -(
      ratio * slopeFactor[n]! * c1 +
      (square * squareFactor[n]! + p0 * valueFactor[n]!) * c0 +
      valueFactor[n]! * (p1 * last + p2 * beforeLast)
    );
    coefficients[at + n + 2] = next;
    endValue += next;
    endSlope += (n + 2) * next;
    beforeLast = last;
    last = c0;
    c0 = c1;
    c1 = next;
  }
  chain.endValue = endValue;
  return endSlope / length;
}

/**
 * R at s = ρ² ≤ 1 of a chain that has been run; the outward run as it is, the inward run with R(1) = 1.
 *
 * @returns the value, to be scaled by the amplitude of whichever run reaches s: outward for s ≤ joint
 */
export function chainValue(
  { centres, lengths, coefficients, outward, inward, joint }: GradedChain,
  l: number,
  s: number,
): number {
  // The pieces of a run lie in order, outward rising and inward falling: bisect for the last that begins before s.
  let first = s <= joint ? 0 : outward;
  let beyond = s <= joint ? outward : outward + inward;
  while (beyond - first > 1) {
    const middle = (first + beyond) >> 1;
    if (s <= joint ? centres[middle]! <= s : centres[middle]! >= s) first = middle;
    else beyond = middle;
  }
  const t = (s - centres[first]!) / lengths[first]!;
  let sum = 0;
  for (let k = first * terms + terms - 1; k >= first * terms; k--) sum = sum * t + coefficients[k]!;
  return first === 0 && s <= joint ? sum * t ** (l / 2) : sum;
}
