import { type JSX, useEffect } from 'react';
import type { Change } from '../keeping/change.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { keeperTexts } from '../texts/keeping.ts';
import { pageAt } from './address.ts';
import { useGo } from './navigation.tsx';

/** Undo and redo in words, and whether everything is kept. */
export function StepsBar(): JSX.Element {
  const keeping = useKeeping();
  const { history, unkept, connection } = useKept();
  const go = useGo();
  const last = history.done.at(-1);
  const next = history.undone.at(-1);

  useEffect(() => {
    const show = (change: Change | null): void => {
      if (change !== null && change.where !== window.location.pathname) go(pageAt(change.where));
    };
    const onKeyDown = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== 'z') return;
      // a text field undoes its own letters
      if (event.target instanceof Element && event.target.closest('input, textarea, [contenteditable]'))
        return;
      event.preventDefault();
      show(event.shiftKey ? keeping.redo() : keeping.undo());
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [keeping, go]);

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
