import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** An element and its inner width, CSS pixels; 0 before it is laid out. */
export function useWidth<E extends HTMLElement>(): readonly [RefObject<E | null>, number] {
  const element = useRef<E>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const here = element.current;
    if (here === null) return;
    setWidth(here.clientWidth);
    const watch = new ResizeObserver(() => setWidth(here.clientWidth));
    watch.observe(here);
    return () => watch.disconnect();
  }, []);
  return [element, width];
}
