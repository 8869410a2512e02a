/** One line of a chart, with its band where the values are uncertain. */
export interface Series {
  label: string
  points: SeriesPoint[]
}

export interface SeriesPoint {
  x: number
  y: number
  low?: number
  high?: number
}

export interface Axis {
  label: string
  unit?: string
}

/** A level to be seen against the lines: the least allowed, the sill, the reserve. */
export interface Level {
  value: number
  label: string
}

/** Lines are told apart by how they are drawn and by their names at their ends, never by colour. */
export const dashes = ['', '7 3', '2 3', '9 3 2 3']

/** Where the names of the lines stand at their ends: beside the last point, moved apart where they would print over each other. */
export function ends(series: readonly Series[], levels: readonly Level[], height: number): { x: number; y: number; label: string }[] {
  const all = [...series.flatMap((s) => s.points.flatMap((p) => [p.y, p.low ?? p.y, p.high ?? p.y])), ...levels.map((l) => l.value)]
  const gap = ((Math.max(...all) - Math.min(...all)) / Math.max(1, height - 50)) * 16
  const list = series.flatMap((s) => (s.points.length ? [{ x: s.points.at(-1)!.x, y: s.points.at(-1)!.y, label: s.label }] : [])).sort((a, b) => b.y - a.y)
  for (let i = 1; i < list.length; i++) list[i]!.y = Math.min(list[i]!.y, list[i - 1]!.y - gap)
  return list
}

/** The table behind a chart: a row for each x, a column for each line, with its band. */
export function table(x: Axis, series: readonly Series[]): { head: string[]; rows: (number | undefined)[][] } {
  const banded = series.map((s) => s.points.some((p) => p.low !== undefined))
  const head = [x.label, ...series.flatMap((s, i) => (banded[i] ? [s.label, `${s.label}, low`, `${s.label}, high`] : [s.label]))]
  const at = series.map((s) => new Map(s.points.map((p) => [p.x, p])))
  const xs = [...new Set(series.flatMap((s) => s.points.map((p) => p.x)))].sort((a, b) => a - b)
  const rows = xs.map((value) => [value, ...at.flatMap((points, i) => cells(points.get(value), banded[i]!))])
  return { head, rows }
}

function cells(p: SeriesPoint | undefined, banded: boolean): (number | undefined)[] {
  return banded ? [p?.y, p?.low, p?.high] : [p?.y]
}

/** Four figures, as many as an ear can hold. */
const said = (x: number) => String(Number(x.toPrecision(4)))

/** What a chart says in a sentence, for those who don't see it. */
export function sentence(title: string, y: Axis, series: readonly Series[]): string {
  const parts = series.filter((s) => s.points.length > 0).map((s) => {
    const [first, last] = [s.points[0]!, s.points.at(-1)!]
    return `${s.label}: ${said(first.y)} → ${said(last.y)}${y.unit ? ` ${y.unit}` : ''}`
  })
  return [title, ...parts].join('. ')
}
