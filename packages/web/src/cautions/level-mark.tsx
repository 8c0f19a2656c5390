import type { CautionLevel } from '@coreward/bench';
import type { JSX } from 'react';

/** How grave it is as a shape: bars that stand closer and fuller the worse it is. The word stands beside it. */
const shapes: Readonly<Record<CautionLevel, string>> = {
  // an open frame: nobody knows
  'not evaluated': 'M1.5 1.5H12.5V12.5H1.5ZM3.5 3.5V10.5H10.5V3.5Z',
  severe: 'M1 1H4.5V13H1ZM5.25 1H8.75V13H5.25ZM9.5 1H13V13H9.5Z',
  serious: 'M2.5 1H6V13H2.5ZM8 1H11.5V13H8Z',
  mind: 'M5.25 1H8.75V13H5.25Z',
  'under the limit': 'M1 10.5H13V13H1Z',
};

export function LevelMark({ level }: { readonly level: CautionLevel }): JSX.Element {
  return (
    <svg className="level-mark" viewBox="0 0 14 14" width="14" height="14" aria-hidden="true">
      <path d={shapes[level]} fillRule="evenodd" />
    </svg>
  );
}
