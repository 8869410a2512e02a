import type { Drawing, Mark, Point } from '../api/contract'

export interface Numbered {
  n: number
  mark: Mark
}

/** The marks of a kind (or of all), worst first and then from aft forward, numbered as the list and the drawing both show them. */
export function numbered(marks: readonly Mark[], kind: string): Numbered[] {
  return marks
    .filter((m) => kind === '' || m.kind === kind) // a copy, so that sorting leaves the drawing's own order alone
    .sort((a, b) => (b.worry ?? 0) - (a.worry ?? 0) || a.x - b.x)
    .map((mark, i) => ({ n: i + 1, mark }))
}

/** The kinds there are, with how many marks each. */
export function kinds(marks: readonly Mark[]): [string, number][] {
  const count = new Map<string, number>()
  for (const m of marks) count.set(m.kind, (count.get(m.kind) ?? 0) + 1)
  return [...count].sort(([a], [b]) => a.localeCompare(b))
}

/** Which marks have room for their number: a mark closer than gap to one before it is drawn as a dot. The chosen one always has. */
export function roomy(points: readonly Point[], gap: number, chosen: number): boolean[] {
  const cells = new Map<string, Point[]>()
  const cell = (x: number, y: number) => `${Math.floor(x / gap)} ${Math.floor(y / gap)}`
  const take = (p: Point) => {
    const key = cell(p[0], p[1])
    cells.set(key, [...(cells.get(key) ?? []), p])
  }
  const free = ([x, y]: Point) => {
    for (const dx of [-gap, 0, gap]) {
      for (const dy of [-gap, 0, gap]) {
        if (cells.get(cell(x + dx, y + dy))?.some(([a, b]) => Math.hypot(a - x, b - y) < gap)) return false
      }
    }
    return true
  }
  const first = points[chosen]
  if (first) take(first)
  return points.map((p, i) => {
    if (i === chosen) return true
    const room = free(p)
    if (room) take(p)
    return room
  })
}

/** The frames that have room for their labels: every one, or every 2nd, 5th, 10th ... by number; lettered ones only where all have room. */
export function framesShown(frames: Drawing['frames'], metresBetween: number): Drawing['frames'] {
  if (frames.length < 2) return frames
  const spacing = Math.abs(frames.at(-1)!.x - frames[0]!.x) / (frames.length - 1) || 1
  const every = [1, 2, 5, 10, 20, 50, 100, 200].find((n) => n * spacing >= metresBetween) ?? 500
  if (every === 1) return frames
  return frames.filter((f) => /^-?\d+$/.test(f.label) && Number(f.label) % every === 0)
}
