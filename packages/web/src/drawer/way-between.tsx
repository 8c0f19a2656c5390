import {
  drawerOfParts,
  type FieldNode,
  placesRefused,
  Refusal,
  type RefusedPlace,
  wayFields,
  wayIn,
} from '@coreward/bench';
import type { JSX } from 'react';
import { Fields } from '../field/fields.tsx';
import { useDraft } from '../field/use-draft.ts';
import { pathOf } from '../frame/address.ts';
import { useSettings } from '../frame/theme-choice.tsx';
import { launchesOf, useKeeping, useKept } from '../keeping/use-keeping.ts';
import { useNewest } from '../keeping/use-newest.ts';
import { launchName } from '../start/launch-name.ts';
import { drawerTexts } from '../texts/drawer.ts';
import { fieldTexts } from '../texts/field.ts';

const here = pathOf({ page: 'drawer' });
const emptyWay = 'coreward: 1\npath: []\n';

function refusedOf(way: string): readonly RefusedPlace[] {
  try {
    drawerOfParts([], way);
    return [];
  } catch (error) {
    if (error instanceof Refusal) return placesRefused(error);
    throw error;
  }
}

/** "210 mm, M1, 150 mm, M2, 95 mm". */
function waySummary(way: string): string {
  const list = wayFields(way);
  return list.kind === 'list' ? list.items.flatMap((item) => firstText(item) ?? []).join(', ') : '';
}

/** What an element is known by: its name, or the first thing that is written about it. */
function firstText(node: FieldNode): string | null {
  switch (node.kind) {
    case 'quantity':
      return node.written?.text ?? null;
    case 'group': {
      const texts = node.fields.map(firstText).filter((text) => text !== null);
      return texts[0] ?? (node.written === 'keys' ? node.key : null);
    }
    case 'list':
      return null;
    default:
      return node.written;
  }
}

/** What lies between any laser and any lens: filled in, or taken from a launch. */
export function WayBetween(): JSX.Element {
  const keeping = useKeeping();
  const state = useKept();
  const settings = useSettings();
  const keep = (way: string | null, what: string): void =>
    keeping.changeSettings({ drawerPath: way }, what, here);
  const draft = useDraft(
    settings.drawerPath ?? emptyWay,
    refusedOf,
    (text, what) => keep(wayIn(text) === null ? null : text, drawerTexts.whatWayEdit(what)),
    keeping.world.session,
    'way between',
  );
  const newest = useNewest();
  const take = async (id: string): Promise<void> => {
    const text = await newest.of(keeping.textOfLaunch(id));
    if (text !== null) keep(wayIn(text), drawerTexts.whatWay(launchName(text)));
  };
  const launches = launchesOf(state).filter(({ putAway }) => !putAway);
  return (
    <section className="way-between">
      <h2>{drawerTexts.way}</h2>
      <p className="quiet">{drawerTexts.wayAbout}</p>
      {settings.drawerPath === null && <p>{drawerTexts.wayNone}</p>}
      {launches.length > 0 && (
        <p>
          <label>
            {drawerTexts.wayFrom}{' '}
            <select value="" onChange={({ target }) => void take(target.value)}>
              <option value="">{drawerTexts.wayChoose}</option>
              {launches.map(({ id, name, text }) => (
                <option key={id} value={id}>
                  {text === null ? name : launchName(text)}
                </option>
              ))}
            </select>
          </label>
        </p>
      )}
      <p>{waySummary(draft.text)}</p>
      <details className="more" open={draft.refused.length > 0 ? true : undefined}>
        <summary>{drawerTexts.wayEdit}</summary>
        <Fields node={wayFields(draft.text)} refused={draft.refused} onWrite={draft.write} />
      </details>
      {draft.refused.length > 0 && (
        <button type="button" className="quiet-button" onClick={draft.takeBack}>
          {fieldTexts.takeBack}
        </button>
      )}
    </section>
  );
}
