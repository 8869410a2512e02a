/** The day that was typed, as year-month-day: 2026-11-30, 2026 11 30, 20261130 and 2026/11/30 are one; undefined where it is no day. */
export function dayOf(typed: string): string | undefined {
  const found = /^\s*(\d{4})[-/. ]?(\d{1,2})[-/. ]?(\d{1,2})\s*$/.exec(typed)
  if (!found) return undefined
  const [year = 0, month = 0, day = 0] = found.slice(1).map(Number)
  const at = new Date(Date.UTC(year, month - 1, day))
  const real = at.getUTCFullYear() === year && at.getUTCMonth() === month - 1 && at.getUTCDate() === day
  return real ? at.toISOString().slice(0, 10) : undefined
}
