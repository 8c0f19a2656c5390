/** Words of the frame around every page. */
export const frameTexts = {
  product: 'Coreward',
  skip: 'Skip to the page',
  pages: 'Pages',
  launches: 'launches',
  drawer: 'drawer',
  gauges: 'gauges',
  match: 'match',
  book: 'bench book',
  instruments: 'instruments',
  pair: 'devices',
  pairThis: 'Pair this device',
  seen: 'seen',
  hazards:
    'Coreward informs about hazards and certifies nothing. Your local rules and your laser safety officer decide; ask before you switch on.',
  opening: 'Opening …',
  title: (page: string): string => `${page} · Coreward`,
  theme: {
    legend: 'light in the room',
    dark: 'dark',
    light: 'light',
    system: 'as this device is set',
    what: {
      dark: 'colours for a dark room',
      light: 'colours for a light room',
      system: 'colours as this device is set',
    },
  },
  unknown: {
    title: 'There is no such page',
    text: (path: string): string =>
      `Nothing is kept at ${path}. The address may be mistyped, or from another bench book.`,
    way: 'To the launches',
  },
  fault: {
    title: 'A fault of ours',
    text: 'This page broke. What was kept is kept, and what was not yet is in this browser.',
    reload: 'Load again',
  },
} as const;
