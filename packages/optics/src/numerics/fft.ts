/** Twiddle factors and bit reversal of one length, kept because rings of one length come by the hundred. */
interface Plan {
  readonly cosines: Float64Array;
  readonly sines: Float64Array;
  readonly reversed: Uint32Array;
}

const plans = new Map<number, Plan>();

function planFor(length: number): Plan {
  const kept = plans.get(length);
  if (kept !== undefined) return kept;
  const bits = Math.round(Math.log2(length));
  const reversed = new Uint32Array(length);
  for (let i = 0; i < length; i += 1) reversed[i] = (reversed[i >> 1]! >> 1) | ((i & 1) << (bits - 1));
  const half = length / 2;
  const plan: Plan = {
    cosines: Float64Array.from({ length: half }, (_, i) => Math.cos((2 * Math.PI * i) / length)),
    sines: Float64Array.from({ length: half }, (_, i) => -Math.sin((2 * Math.PI * i) / length)),
    reversed,
  };
  plans.set(length, plan);
  return plan;
}

/**
 * Forward discrete Fourier transform Σ x_j exp(−2πi jk/N) in place, radix 2.
 *
 * Valid for lengths that are powers of two; the caller chooses its lengths so, and nothing is checked here.
 *
 * @source J. W. Cooley and J. W. Tukey, Math. Comput. 19, 297 (1965) (from memory)
 */
export function fourierTransform(re: Float64Array, im: Float64Array): void {
  const length = re.length;
  const { cosines, sines, reversed } = planFor(length);
  for (let i = 0; i < length; i += 1) {
    const j = reversed[i]!;
    if (j > i) {
      const swapRe = re[i]!;
      const swapIm = im[i]!;
      re[i] = re[j]!;
      im[i] = im[j]!;
      re[j] = swapRe;
      im[j] = swapIm;
    }
  }
  for (let size = 2; size <= length; size *= 2) {
    const half = size / 2;
    const stride = length / size;
    for (let start = 0; start < length; start += size) {
      for (let i = 0; i < half; i += 1) {
        const c = cosines[i * stride]!;
        const s = sines[i * stride]!;
        const a = start + i;
        const b = a + half;
        const xRe = re[b]! * c - im[b]! * s;
        const xIm = re[b]! * s + im[b]! * c;
        re[b] = re[a]! - xRe;
        im[b] = im[a]! - xIm;
        re[a] = re[a]! + xRe;
        im[a] = im[a]! + xIm;
      }
    }
  }
}
