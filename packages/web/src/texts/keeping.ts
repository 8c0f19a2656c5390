/** Words about what is kept, what is not yet, and why. */
export const keeperTexts = {
  changedElsewhere: (name: string): string => `“${name}” was changed on another page.`,
  joining: 'Looking for the station …',
  lost: 'The station does not answer. What you change stays here, in this browser, and is sent as soon as it is back.',
  lostUnremembered:
    'The station does not answer, and this browser remembers nothing. Leave this page open: what you change is only here.',
  unpaired: 'This device is not let in.',
  outdated: 'The station was renewed. Load this page again to go on; nothing is lost by it.',
  reload: 'Load again',
  cannotKeep: 'The station cannot keep anything now. It is tried again.',
  kept: 'Kept',
  keeping: 'Keeping …',
  waiting: (count: number): string => (count === 1 ? '1 change waits' : `${count} changes wait`),
  undo: (what: string): string => `Undo: ${what}`,
  redo: (what: string): string => `Redo: ${what}`,
  nothingToUndo: 'Nothing to undo',
  clash: {
    title: (name: string): string => `“${name}” was changed on two pages at once`,
    text: 'Both are here, and neither is lost. Which one goes on?',
    gone: 'The bench book no longer knows it: it may be another book.',
    mine: 'Here',
    theirs: 'On the other page',
    keepMine: 'Go on with what is here',
    keepTheirs: 'Go on with the other',
    keepBoth: 'Keep both: what is here becomes a launch of its own',
    difference: (place: string): string => place,
    same: 'Nothing differs but comments and order.',
  },
  unwanted: {
    title: 'The station does not take this change',
    setAside: 'Set the change aside',
  },
} as const;
