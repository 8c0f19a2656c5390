/** The number a quantity begins with: its sign, its digits, and what follows. */
const leadingNumber = /^(\s*)([-−+]?)(\d+)(?:([.,])(\d+))?(?![\d\s]*[.,]?\d)(.*)$/su;

/**
 * A quantity as it is written, moved by so many units of its last digit: `6.2 mm ± 2 %` by 1 is `6.3 mm ± 2 %`.
 * `null` where it does not begin with a plain number (`1e-3 W`, `none`), which nobody steps through.
 */
export function stepText(text: string, steps: number): string | null {
  const [, space, sign, whole, mark, decimals = '', rest] = leadingNumber.exec(text) ?? [];
  if (space === undefined || whole === undefined || rest === undefined || /^e[-+\d]/iu.test(rest))
    return null;
  const negative = sign === '-' || sign === '−';
  const moved = BigInt(`${negative ? '-' : ''}${whole}${decimals}`) + BigInt(steps);
  const digits = (moved < 0n ? -moved : moved).toString().padStart(decimals.length + 1, '0');
  const cut = digits.length - decimals.length;
  const shownSign = moved < 0n ? (sign === '' || sign === '+' ? '-' : sign) : sign === '+' ? '+' : '';
  return `${space}${shownSign}${digits.slice(0, cut)}${decimals === '' ? '' : `${mark}${digits.slice(cut)}`}${rest}`;
}
