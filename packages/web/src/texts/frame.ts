/** Words of the frame around every page. */
export const frameTexts = {
  product: 'Coreward',
  skip: 'Skip to the page',
  pages: 'Pages',
  launches: 'launches',
  drawer: 'drawer',
  match: 'match',
  book: 'bench book',
  devices: 'other devices',
  opening: 'Opening …',
  title: (page: string): string => `${page} · Coreward`,
  unknown: {
    title: 'There is no such page',
    text: (path: string): string =>
      `Nothing is kept at ${path}. The address may be mistyped or from another bench book.`,
    way: 'To the launches',
  },
} as const;
