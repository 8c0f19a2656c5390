/** A page with what stands between the two marks of that name replaced. */
export function between(
  page: string,
  name: string,
  put: string,
  writer = 'scripts/write-documents.ts',
): string {
  const begin = `<!-- ${name}: written by ${writer} -->`;
  const end = `<!-- end of ${name} -->`;
  const [from, to] = [page.indexOf(begin), page.indexOf(end)];
  if (from < 0 || to < from) throw new Error(`the page has no place for: ${name}`);
  return `${page.slice(0, from)}${begin}\n\n${put}\n\n${page.slice(to)}`;
}
