/** A page with what stands between the two marks of that name replaced. */
export function between(page: string, name: string, put: string): string {
  const begin = `<!-- ${name}: written by scripts/write-documents.ts -->`;
  const end = `<!-- end of ${name} -->`;
  const [from, to] = [page.indexOf(begin), page.indexOf(end)];
  if (from < 0 || to < from) throw new Error(`the page has no place for: ${name}`);
  return `${page.slice(0, from)}${begin}\n\n${put}\n\n${page.slice(to)}`;
}
