/** The grounds that text stands on, as in tokens.css; the test holds the two together. */
export const grounds = {
  dark: { ground: '#0b0c0e', raised: '#141518' },
  light: { ground: '#f6f3ec', raised: '#fffdf8' },
} as const;
