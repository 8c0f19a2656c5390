import { createContext, type JSX, type MouseEvent, type ReactNode, useContext } from 'react';
import { type Page, pathOf } from './address.ts';

/** Goes to another page of the app; `replace` leaves no step back. */
export type Go = (page: Page, how?: { readonly replace: boolean }) => void;

export const GoContext = createContext<Go>(() => {});

export const useGo = (): Go => useContext(GoContext);

/** A link to a page of the app: a real address, so that it can be opened in another window. */
export function PageLink({
  to,
  here = false,
  className,
  children,
}: {
  readonly to: Page;
  readonly here?: boolean;
  readonly className?: string;
  readonly children: ReactNode;
}): JSX.Element {
  const go = useGo();
  const follow = (event: MouseEvent): void => {
    if (event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    go(to);
  };
  return (
    <a href={pathOf(to)} onClick={follow} className={className} aria-current={here ? 'page' : undefined}>
      {children}
    </a>
  );
}
