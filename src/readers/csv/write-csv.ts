/** null: an empty cell. */
export type Cell = string | number | boolean | null

export type DecimalSign = '.' | ','

/** Spreadsheets take a cell that begins so for a formula, and would work it out. */
const FORMULA = /^[=+\-@\t\r]/

/**
 * A table as CSV by RFC 4180: lines end with CR LF, a cell with a separator, quote or line break stands in quotes.
 * Where decimals have a comma, spreadsheets expect semicolons between cells, so a table with commas gets those. It
 * begins with a byte order mark, by which they know UTF-8. Text that would pass for a formula gets an apostrophe
 * before it; numbers are written as they are, to three decimals.
 */
export function writeCsv(rows: readonly (readonly Cell[])[], decimalSign: DecimalSign): string {
  const separator = decimalSign === ',' ? ';' : ','
  const lines = rows.map((row) =>
    row.map((cell) => quoted(written(cell, decimalSign), separator)).join(separator),
  )
  return `\ufeff${lines.map((line) => `${line}\r\n`).join('')}`
}

function written(cell: Cell, decimalSign: DecimalSign): string {
  if (cell === null) return ''
  if (typeof cell === 'number') return String(Math.round(cell * 1_000) / 1_000).replace('.', decimalSign)
  const text = String(cell)
  return FORMULA.test(text) ? `'${text}` : text
}

function quoted(text: string, separator: string): string {
  const mustBe = text.includes(separator) || /["\r\n]/.test(text)
  return mustBe ? `"${text.replaceAll('"', '""')}"` : text
}
