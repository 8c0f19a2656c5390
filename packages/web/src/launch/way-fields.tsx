import { type ListField, writtenWay } from '@coreward/bench';
import { type JSX, useState } from 'react';
import type { FieldProps } from '../field/field.tsx';
import { Fields } from '../field/fields.tsx';
import { useSettings } from '../frame/theme-choice.tsx';
import { launchTexts } from '../texts/launch.ts';

/** What lies between laser and lens, element by element; unfolded where nothing does. */
export function WayFields({ node, refused, onWrite }: FieldProps<ListField>): JSX.Element {
  const { drawerPath } = useSettings();
  const empty = node.items.length === 0;
  // stays unfolded while the first elements are laid in
  const [unfolded] = useState(empty);
  return (
    <details className="more" open={unfolded}>
      <summary>{launchTexts.way}</summary>
      {empty && drawerPath !== null && (
        <button
          type="button"
          className="quiet-button"
          onClick={() => onWrite(node.path, writtenWay(drawerPath), launchTexts.whatWay)}
        >
          {launchTexts.layWay}
        </button>
      )}
      <Fields node={node} refused={refused} onWrite={onWrite} />
    </details>
  );
}
