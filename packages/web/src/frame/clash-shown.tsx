import { differences, placeWords, Refusal } from '@coreward/bench';
import type { JSX } from 'react';
import { contentOfText } from '../keeping/change.ts';
import type { Clash } from '../keeping/state.ts';
import { useKeeping } from '../keeping/use-keeping.ts';
import { keeperTexts } from '../texts/keeping.ts';

/** One thing that was changed on two pages at once, both ways, and the choice between them. */
export function ClashShown({ clash }: { readonly clash: Clash }): JSX.Element {
  const keeping = useKeeping();
  const words = keeperTexts.clash;
  const { theirs, thing } = clash;
  const mine = contentOfText(clash.mine);
  const other = theirs !== null && 'text' in theirs ? theirs.text : null;
  const settle = (how: 'mine' | 'theirs' | 'both') => (): void =>
    keeping.settleClash(clash, how, window.location.pathname);
  return (
    <section>
      <h2>{words.title(theirs !== null && 'name' in theirs ? theirs.name : clash.what)}</h2>
      <p>{theirs === null ? words.gone : words.text}</p>
      {mine !== null && other !== null && <Both mine={mine} theirs={other} />}
      <p className="choices">
        <button type="button" onClick={settle('mine')}>
          {words.keepMine}
        </button>
        {theirs !== null && (
          <button type="button" onClick={settle('theirs')}>
            {words.keepTheirs}
          </button>
        )}
        {thing.kind === 'launch' && (
          <button type="button" onClick={settle('both')}>
            {words.keepBoth}
          </button>
        )}
      </p>
    </section>
  );
}

function Both({ mine, theirs }: { readonly mine: string; readonly theirs: string }): JSX.Element {
  const words = keeperTexts.clash;
  const found = differencesBetween(theirs, mine);
  if (found.length === 0) return <p>{words.same}</p>;
  return (
    <div className="scroll">
      <table>
        <thead>
          <tr>
            <th scope="col">{words.place}</th>
            <th scope="col">{words.mine}</th>
            <th scope="col">{words.theirs}</th>
          </tr>
        </thead>
        <tbody>
          {found.map(({ place, before, after }) => (
            <tr key={place}>
              <th scope="row">{placeWords(place)}</th>
              <td>{after ?? words.nothing}</td>
              <td>{before ?? words.nothing}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function differencesBetween(theirs: string, mine: string) {
  try {
    return differences(theirs, mine);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return [{ place: '', before: theirs, after: mine }];
  }
}
