/** More items than stand on any bench. */
export const longestList = 500;
/** UTF-16 units. */
export const longestName = 200;
/** UTF-16 units. */
export const longestNote = 500;
