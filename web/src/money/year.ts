/** The year, with its fraction, that lies some years after a day. */
export function yearFrom(day: string, after: number): number {
  const at = new Date(day)
  const year = at.getUTCFullYear()
  const start = Date.UTC(year, 0, 1)
  return year + (at.getTime() - start) / (Date.UTC(year + 1, 0, 1) - start) + after
}
