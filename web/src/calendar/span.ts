// Days along a strip as places on paper.

const day = 86_400_000

/** An ISO day as a number of days. */
export function dayNumber(iso: string): number {
  return Math.round(Date.parse(`${iso}T00:00:00Z`) / day)
}

export function isoDay(n: number): string {
  return new Date(n * day).toISOString().slice(0, 10)
}

export interface Axis {
  /** Where a day begins. */
  at: (iso: string) => number
  /** Where a day has ended. */
  after: (iso: string) => number
  ticks: Tick[]
  /** Width of one day. */
  day: number
}

export interface Tick {
  x: number
  label: string
  /** Written under the label where it changes: the year under months, the month under days. */
  under: string
}

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']

/** The days from one to the other, both included, over a width: with a tick a month, or a tick a day where there is room for its number. */
export function axis(from: string, to: string, width: number): Axis {
  const first = dayNumber(from)
  const last = Math.max(dayNumber(to), first)
  const one = width / (last - first + 1)
  const x = (n: number) => Math.min(width, Math.max(0, (n - first) * one))
  const byDay = one >= 7
  const step = Math.max(1, Math.ceil(22 / one))
  const ticks: Tick[] = []
  let group = ''
  for (let n = first; n <= last; n++) {
    const [y = '', m = '', d = ''] = isoDay(n).split('-')
    const name = months[Number(m) - 1] ?? m
    if (byDay) {
      const under = `${name} ${y}`
      const head = under !== group
      if (head || (Number(d) - 1) % step === 0) ticks.push({ x: x(n), label: String(Number(d)), under: head ? under : '' })
      group = under
    } else if (d === '01' || n === first) {
      const wide = one * 30 >= 34
      ticks.push({ x: x(n), label: wide ? name : name.slice(0, 1), under: y === group || width - x(n) < 30 ? '' : y })
      group = y
    }
  }
  return { at: (iso) => x(dayNumber(iso)), after: (iso) => x(dayNumber(iso) + 1), ticks, day: one }
}

/** A run of days a few days wider than a window, for a closer look. */
export function around(opens: string, closes: string, margin: number): { from: string; to: string } {
  return { from: isoDay(dayNumber(opens) - margin), to: isoDay(dayNumber(closes) + margin) }
}

/** 2027-09-15 as 15 Sep 2027. */
export function short(iso: string): string {
  const [y = '', m = '', d = ''] = iso.split('-')
  return [d && String(Number(d)), months[Number(m) - 1] ?? m, y].filter(Boolean).join(' ')
}

/** Whether a text fits into a width, by its letters: good enough to leave out what would run over its span. */
export function fitsIn(text: string, width: number): boolean {
  return text.length * 6.6 + 8 <= width
}
