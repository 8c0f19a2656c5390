import type { RefusalParts } from '@coreward/bench';
import type { RefusalCode, RefusedAnswer } from '@coreward/contract';

/** A question that the station does not answer as asked, and why, as the page is told it. */
export class Declined extends Error {
  readonly answer: RefusedAnswer;

  constructor(
    code: RefusalCode,
    refused: RefusalParts | readonly RefusalParts[],
    current?: RefusedAnswer['current'],
  ) {
    const parts: readonly RefusalParts[] = 'where' in refused ? [refused] : refused;
    super(parts.map(({ where, what, mend }) => `${where}: ${what}. ${mend}`).join('\n'));
    this.name = 'Declined';
    this.answer = { code, refused: [...parts], ...(current === undefined ? {} : { current }) };
  }
}
