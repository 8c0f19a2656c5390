import { type JSX, useEffect } from 'react';
import type { Change } from '../keeping/change.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { keeperTexts } from '../texts/keeping.ts';
import { type Page, pageAt } from './address.ts';
import { useGo } from './navigation.tsx';

/** Whether a change is a matter of this page: it was done here, or the page shows the document it changes. */
function isOf(change: Change, page: Page): boolean {
  const { thing, where } = change;
  switch (page.page) {
    case 'start':
    case 'drawer':
      return true;
    case 'launch':
    case 'versions':
      return thing.kind !== 'launch' || thing.id === page.id;
    // hands are at the bench here, and what stands below must not be mistaken for a step of theirs
    case 'steer':
    case 'walk':
      return false;
    default:
      return where === window.location.pathname;
  }
}

/** Undo and redo in words, where they are a matter of the page, and whether everything is kept. */
export function StepsBar({ page }: { readonly page: Page }): JSX.Element {
  const keeping = useKeeping();
  const { history, unkept, connection } = useKept();
  const go = useGo();
  const of = (change: Change | undefined): Change | undefined =>
    change !== undefined && isOf(change, page) ? change : undefined;
  const last = of(history.done.at(-1));
  const next = of(history.undone.at(-1));

  useEffect(() => {
    const show = (change: Change | null): void => {
      if (change !== null && change.where !== window.location.pathname) go(pageAt(change.where));
    };
    const onKeyDown = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== 'z') return;
      // a text field undoes its own letters
      if (event.target instanceof Element && event.target.closest('input, textarea, [contenteditable]'))
        return;
      if ((event.shiftKey ? next : last) === undefined) return;
      event.preventDefault();
      show(event.shiftKey ? keeping.redo() : keeping.undo());
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [keeping, go, last, next]);

  const step = (act: () => Change | null) => (): void => {
    const change = act();
    if (change !== null && change.where !== window.location.pathname) go(pageAt(change.where));
  };
  return (
    <section
      aria-label={keeperTexts.steps}
      className="steps"
      hidden={last === undefined && next === undefined && unkept.length === 0}
    >
      {last !== undefined && (
        <button type="button" className="step" onClick={step(keeping.undo)} aria-keyshortcuts="Control+Z">
          {keeperTexts.undo(last.what)}
        </button>
      )}
      {next !== undefined && (
        <button
          type="button"
          className="step"
          onClick={step(keeping.redo)}
          aria-keyshortcuts="Control+Shift+Z"
        >
          {keeperTexts.redo(next.what)}
        </button>
      )}
      <span className="kept" data-unkept={unkept.length}>
        {unkept.length === 0
          ? keeperTexts.kept
          : connection === 'joined'
            ? keeperTexts.keeping
            : keeperTexts.waiting(unkept.length)}
      </span>
    </section>
  );
}
