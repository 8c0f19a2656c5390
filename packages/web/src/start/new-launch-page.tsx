import {
  type FieldPath,
  fieldAt,
  launchFields,
  placeOfPath,
  placesRefused,
  Refusal,
  type RefusedPlace,
  readLaunch,
  setInText,
} from '@coreward/bench';
import { type FormEvent, type JSX, useState } from 'react';
import type { OnWrite } from '../field/field.tsx';
import { Fields } from '../field/fields.tsx';
import { Refusals } from '../field/mend.tsx';
import { pathOf } from '../frame/address.ts';
import { PageLink, useGo } from '../frame/navigation.tsx';
import { PageHeading } from '../frame/page-heading.tsx';
import { useKeeping } from '../keeping/use-keeping.ts';
import { startTexts } from '../texts/start.ts';
import { launchName } from './launch-name.ts';

/** A name, and the six lines that a forecast needs. */
const lines: readonly { readonly path: FieldPath; readonly label: string; readonly example: string }[] = [
  { path: ['name'], label: startTexts.form.lines.name, example: '' },
  { path: ['laser', 'wavelength'], label: startTexts.form.lines.wavelength, example: '520 nm' },
  { path: ['laser', 'power'], label: startTexts.form.lines.power, example: '5 mW' },
  { path: ['laser', 'beam', 'diameter'], label: startTexts.form.lines.diameter, example: '1.1 mm' },
  { path: ['laser', 'beam', 'at'], label: startTexts.form.lines.at, example: '300 mm' },
  { path: ['collimator', 'focal length'], label: startTexts.form.lines.focalLength, example: '8 mm' },
  { path: ['fibre', 'type'], label: startTexts.form.lines.fibre, example: '' },
];

const empty = 'coreward: 1\nlaser: { beam: {} }\ncollimator: {}\nfibre: {}\n';
const storeKey = 'coreward.draft.new launch';

/** What is refused of a launch, by its places. */
function refusedIn(text: string): readonly RefusedPlace[] {
  try {
    readLaunch(text, 'launch');
    return [];
  } catch (error) {
    if (error instanceof Refusal) return placesRefused(error);
    throw error;
  }
}

/** A short form for a new launch; what is typed stays until the launch is made. */
export function NewLaunchPage(): JSX.Element {
  const keeping = useKeeping();
  const go = useGo();
  const { session } = keeping.world;
  const [text, setText] = useState(() => session.getItem(storeKey) ?? empty);
  const [asked, setAsked] = useState(false);
  const root = launchFields(text);
  const fields = lines.flatMap(({ path, label, example }) => {
    const field = fieldAt(root, path);
    if (field === null) return [];
    // each line of this form is needed, however a whole document might do without
    const leftOut = field.leftOut.kind === 'optional' ? ({ kind: 'required' } as const) : field.leftOut;
    return [{ ...field, key: label, leftOut, ...(field.kind === 'quantity' ? { example } : {}) }];
  });
  const refused = refusedIn(text);
  const missing = fields.filter(
    (field) => 'written' in field && field.written === null && field.leftOut.kind === 'required',
  );
  const missingPlaces = missing.map(({ path }) => placeOfPath(path));
  // a field that nobody has filled in yet is not refused, it is asked for
  const told = refused.filter(
    ({ place }) =>
      fields.some((field) => placeOfPath(field.path) === place) && !missingPlaces.includes(place),
  );
  const write: OnWrite = (path, value) => {
    const next = setInText(text, path, value);
    setText(next);
    try {
      session.setItem(storeKey, next);
    } catch {
      // it is still on the page
    }
  };
  const begin = (event: FormEvent): void => {
    event.preventDefault();
    setAsked(true);
    if (refused.length > 0) return;
    const what = startTexts.form.what(launchName(text));
    session.removeItem(storeKey);
    const id = keeping.newLaunch({ text, putAway: false, invented: false }, what, pathOf({ page: 'start' }));
    go({ page: 'launch', id }, { replace: true });
  };
  return (
    <>
      <PageHeading title={startTexts.form.title} />
      <p>{startTexts.form.intro}</p>
      <form onSubmit={begin} className="sheet" noValidate>
        {fields.map((field) => (
          <Fields key={placeOfPath(field.path)} node={field} refused={told} onWrite={write} />
        ))}
        <p>
          <button type="submit" className="act">
            {startTexts.form.begin}
          </button>
        </p>
        {asked && missing.length > 0 && (
          <p role="alert" className="refusal">
            {startTexts.form.needed(missing.map(({ key }) => key).join(', '))}
          </p>
        )}
        {asked && missing.length === 0 && (
          <Refusals id="rest" refused={refused.filter((one) => !told.includes(one))} />
        )}
      </form>
      <p className="quiet">
        {startTexts.form.from} <PageLink to={{ page: 'match' }}>{startTexts.form.match}</PageLink>
      </p>
    </>
  );
}
