/**
 * Rows as CSV, with line breaks CR LF; a field stands in quotes where it has to.
 *
 * @source RFC 4180, 2; from memory
 */
export function writeCsv(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(quoted).join(',')}\r\n`).join('');
}

const quoted = (field: string): string =>
  /[",\r\n]/u.test(field) || field === '' ? `"${field.replaceAll('"', '""')}"` : field;

/**
 * The rows of a CSV text, whichever way its lines end. Null if a quote is left open or stands where none may.
 *
 * @source RFC 4180, 2; from memory
 */
export function readCsv(text: string): readonly (readonly string[])[] | null {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = text.startsWith('\ufeff') ? 1 : 0; // a spreadsheet's mark of UTF-8
  while (at < text.length) {
    const field = /("[^"]*(?:""[^"]*)*"|[^",\r\n]*)(,|\r\n|\n|\r|$)/uy;
    field.lastIndex = at;
    const found = field.exec(text);
    if (found === null) return null;
    const [all, written = '', end = ''] = found;
    row.push(written.startsWith('"') ? written.slice(1, -1).replaceAll('""', '"') : written);
    at += all.length;
    if (end === ',' && at < text.length) continue;
    if (end === ',') row.push('');
    rows.push(row);
    row = [];
  }
  return rows;
}
