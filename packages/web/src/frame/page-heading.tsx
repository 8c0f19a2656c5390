import { createContext, type JSX, type ReactNode, useContext, useEffect, useRef } from 'react';
import { frameTexts } from '../texts/frame.ts';

/** How many times the page was changed since the app was loaded. */
export const ArrivalContext = createContext(0);

/** The page's title: names the window too, and is where the focus goes on arrival. */
export function PageHeading({
  title,
  children,
}: {
  readonly title: string;
  readonly children?: ReactNode;
}): JSX.Element {
  const arrival = useContext(ArrivalContext);
  const heading = useRef<HTMLHeadingElement>(null);
  const first = useRef(arrival);
  useEffect(() => {
    document.title = frameTexts.title(title);
  }, [title]);
  useEffect(() => {
    // the first page is begun at its top, as any other
    if (first.current > 0) heading.current?.focus({ preventScroll: true });
  }, []);
  return (
    <h1 ref={heading} tabIndex={-1}>
      {title}
      {children}
    </h1>
  );
}
