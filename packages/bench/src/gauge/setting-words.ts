/** What to do about a setting, as a page says it that has a field for it: "Set `pixel` to `5.2 µm`". */
export const setTo = (setting: string, example: string): string => `Set \`${setting}\` to \`${example}\``;

/** The same within a sentence. */
export const setToWithin = (setting: string, example: string): string =>
  setTo(setting, example).replace('Set', 'set');

/** A text with settings in it as a shell says it, where they are typed: `Add --set "pixel=5.2 µm"`. */
export const inShell = (text: string): string =>
  text.replace(
    /\b(S|s)et `([^`]+)` to `([^`]+)`/gu,
    (_, initial: string, setting: string, example: string) =>
      `${initial === 'S' ? 'Add' : 'add'} --set "${setting}=${example}"`,
  );
