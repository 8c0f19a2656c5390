import { printable, type RefusalParts } from '@coreward/bench';
import { wrapHanging } from './wrap.ts';

/** One block a refusal: where it is, what is wrong, and the mend. Ends in a line break. */
export function refusalText(parts: readonly RefusalParts[], width: number): string {
  return parts
    .map(({ where, what, mend }) =>
      [
        printable(where, 400),
        ...wrapHanging(`${printable(what, 2000)}.`, '  ', width),
        ...wrapHanging(printable(mend, 2000), '  mend: ', width),
      ].join('\n'),
    )
    .join('\n\n')
    .concat('\n');
}
