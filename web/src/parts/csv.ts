/** Rows as CSV (RFC 4180), with the mark that makes spreadsheets read it as UTF-8. */
export function csv(rows: readonly (readonly unknown[])[]): string {
  return '\uFEFF' + rows.map((row) => row.map(cell).join(',')).join('\r\n') + '\r\n'
}

/** A cell; one that a spreadsheet would run as a formula is kept as text. */
function cell(value: unknown): string {
  let text = value === null || value === undefined ? '' : typeof value === 'object' ? JSON.stringify(value) : String(value)
  if (/^[=@\t\r]/.test(text) || (/^[+-]/.test(text) && Number.isNaN(Number(text)))) text = "'" + text
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/** Hands a text to the reader as a file. */
export function save(name: string, content: string, type = 'text/csv;charset=utf-8'): void {
  const url = URL.createObjectURL(new Blob([content], { type }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), 10_000)
}
