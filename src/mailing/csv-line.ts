// Texts arrive; one line of a table leaves that a spreadsheet opens without running any of it.

/** A cell that starts like this would be computed by a spreadsheet (OWASP, "CSV Injection"). */
const formula = /^[\s]*[=+\-@\t\r]|^[\t\r]/;

/**
 * Always quoted, quotes doubled, CRLF (RFC 4180); a cell that looks like a formula opens with an apostrophe.
 * Line ends inside a cell become spaces, so that one record is one line.
 * @example csvLine(['SB-1', '=1+1']) // '"SB-1","\'=1+1"\r\n'
 */
export function csvLine(cells: readonly (string | number | null)[]): string {
  return `${cells.map(cell).join(',')}\r\n`;
}

function cell(content: string | number | null): string {
  if (typeof content === 'number') return `"${content}"`;
  const text = (content ?? '').replace(/\s*[\r\n]+\s*/g, ' ');
  const harmless = formula.test(text) ? `'${text}` : text;
  return `"${harmless.replaceAll('"', '""')}"`;
}

/** Opens a file of lines: spreadsheets take it for UTF-8 by its mark. */
export const csvStart = '\uFEFF';
