/** A text as it begins a sentence or a heading: its first letter is a capital. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
