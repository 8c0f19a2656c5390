/** What was asked is done; it was refused, and how to mend it is said; a fault of ours (EX_SOFTWARE of sysexits, from memory). */
export const exitCodes = { done: 0, refused: 2, ourFault: 70 } as const;
