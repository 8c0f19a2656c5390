/**
 * Places for labels of some width along a line: as near to where they belong as they can stand without touching, in
 * their order, inside the line. Where they cannot all fit they stand edge to edge and leave the line at its end.
 *
 * @param wanted centres, in rising order; any unit
 * @param width of every label, gap included
 * @param length of the line
 */
export function placesApart(wanted: readonly number[], width: number, length: number): readonly number[] {
  // blocks of labels that touch; each stands where it is least far from all its wishes (their mean)
  const blocks: { readonly first: number; wish: number; count: number }[] = [];
  wanted.forEach((want, i) => {
    blocks.push({ first: i, wish: want, count: 1 });
    for (let last = blocks.at(-1)!, before = blocks.at(-2); before !== undefined; ) {
      if (startOf(before) + before.count * width <= startOf(last)) break;
      // as its own labels see it, the second block's wish lies `before.count` widths further left
      before.wish =
        (before.wish * before.count + (last.wish - before.count * width) * last.count) /
        (before.count + last.count);
      before.count += last.count;
      blocks.pop();
      last = before;
      before = blocks.at(-2);
    }
  });
  return blocks.flatMap((block) =>
    Array.from({ length: block.count }, (_, i) => startOf(block) + width / 2 + i * width),
  );

  /** Left edge of a block, kept inside the line. */
  function startOf({ wish, first }: { readonly wish: number; readonly first: number }) {
    const lowest = first * width;
    const highest = length - (wanted.length - first) * width;
    return Math.max(lowest, Math.min(Math.max(highest, lowest), wish - width / 2));
  }
}
