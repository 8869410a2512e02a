// The page shows today, the last seven days, or the whole stay. Nothing that still waits for somebody is ever left out.
import type { Brief } from '../api/contract'

export type Span = 'today' | 'week' | 'stay'
type Page = Brief['indock']

const days = { today: 0, week: 6, stay: Infinity } as const

/** The ISO date so many days before another. */
export function back(day: string, n: number): string {
  if (!Number.isFinite(n)) return ''
  const at = new Date(`${day}T00:00:00Z`)
  at.setUTCDate(at.getUTCDate() - n)
  return at.toISOString().slice(0, 10)
}

/** What of the page belongs to a span of days that ends on a day. */
export function since(of: Page, day: string, span: Span): Page {
  if (span === 'stay') return of
  const from = back(day, days[span])
  const ahead = back(day, span === 'today' ? -1 : -7)
  return {
    ...of,
    lit: of.lit.filter((l) => l.state !== 'answered' || settledSince(of, l.found, from)),
    found: of.found.filter((f) => f.date >= from || f.disposition === 'open' || settledSince(of, f.id, from)),
    changes: of.changes.filter((c) => c.date >= from || c.state === 'asked' || c.state === 'priced'),
    deadlines: of.deadlines.filter((n) => !n.due || n.due <= ahead),
    decided: of.decided.filter((d) => d.date >= from),
    progress: of.progress.filter((p) => p.state === 'under way' || (span === 'week' && (p.state === 'not begun' || p.finished >= from)) || (p.finished ?? '') >= from),
    spells: of.spells.filter((s) => s.to >= (span === 'today' ? day : from)),
    films: of.films.filter((f) => f.date >= from),
    leaks: of.leaks.filter((l) => l.date >= from || l.state === 'running' || l.state === 'weeping'),
    landed: [],
    blocks: [],
    log: of.log.filter((l) => l.date >= from),
  }
}

function settledSince(of: Page, id: string, from: string): boolean {
  return of.decided.some((d) => d.id === id && d.date >= from)
}
