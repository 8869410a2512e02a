import type { Drawing, Mark, Point } from '../api/contract'
import type { Box } from './picture'

export interface Numbered {
  n: number
  mark: Mark
}

/** The choice of what asks for action, of whatever kind; no kind of record is called so. */
export const asking = 'asking'

/** Whether a mark asks for action. */
export function urgent(mark: Mark): boolean {
  return (mark.worry ?? 0) >= 2
}

/** The marks of a kind, of what asks for action, or of all, worst first and then from aft forward, numbered as the list and the drawing both show them. */
export function numbered(marks: readonly Mark[], kind: string): Numbered[] {
  return marks
    .filter((m) => kind === '' || (kind === asking ? urgent(m) : m.kind === kind)) // a copy, so that sorting leaves the drawing's own order alone
    .sort((a, b) => (b.worry ?? 0) - (a.worry ?? 0) || a.x - b.x)
    .map((mark, i) => ({ n: i + 1, mark }))
}

/** The kinds there are, with how many marks each. */
export function kinds(marks: readonly Mark[]): [string, number][] {
  const count = new Map<string, number>()
  for (const m of marks) count.set(m.kind, (count.get(m.kind) ?? 0) + 1)
  return [...count].sort(([a], [b]) => a.localeCompare(b))
}

/** A mark at one of its places on the paper. */
export interface Spot extends Numbered {
  at: Point
  chosen: boolean
  /** Whether there is room for its number; it is a dot where there is not. */
  roomy: boolean
}

const few = 80 // marks in the window that may all have their numbers

/**
 * The marks that are seen in a window, at their places. The chosen one always has its number, then those that worry most; where many are seen,
 * only those that ask for something have one. Dots that would cover each other are drawn once.
 */
export function spots(marks: readonly Numbered[], places: (mark: Mark) => Point[], window: Box, gap: number, chosen: string | undefined): Spot[] {
  const seen = marks.flatMap(({ n, mark }) =>
    places(mark).filter((at) => inside(window, at)).map((at): Spot => ({ n, mark, at, chosen: mark.id === chosen, roomy: false })),
  )
  const numbers = new Room(gap)
  const dots = new Room(gap / 4)
  const crowded = seen.length > few
  for (const s of seen.filter((one) => one.chosen)) {
    numbers.take(s.at)
    s.roomy = true
  }
  for (const s of seen) if (!s.chosen && (!crowded || s.mark.worry >= 2)) s.roomy = numbers.take(s.at)
  return seen.filter((s) => s.roomy || dots.take(s.at)).reverse() // the first are drawn last, and so on top
}

function inside({ x, y, w, h }: Box, at: Point): boolean {
  return at[0] >= x && at[0] <= x + w && at[1] >= y && at[1] <= y + h
}

/** Places taken so far, in squares as wide as the gap, so that only neighbours are looked at. */
export class Room {
  #squares = new Map<string, Point[]>()
  constructor(readonly gap: number) {}

  /** Takes the place if nothing stands closer than the gap. */
  take(at: Point): boolean {
    if (this.#near(at).some(([x, y]) => Math.hypot(x - at[0], y - at[1]) < this.gap)) return false
    const key = this.#square(at[0], at[1])
    this.#squares.set(key, [...(this.#squares.get(key) ?? []), at])
    return true
  }

  #near([x, y]: Point): Point[] {
    const steps = [-this.gap, 0, this.gap]
    return steps.flatMap((dx) => steps.flatMap((dy) => this.#squares.get(this.#square(x + dx, y + dy)) ?? []))
  }

  #square(x: number, y: number): string {
    return `${Math.floor(x / this.gap)} ${Math.floor(y / this.gap)}`
  }
}

/** Metres from one frame to the next, by the numbers of those that are named; not every frame need be. */
export function frameSpacing(frames: Drawing['frames']): number {
  const numbered = frames.filter((f) => /^-?\d+$/.test(f.label))
  const [first, last] = [numbered[0], numbered.at(-1)]
  if (!first || !last || first.label === last.label) return 1
  return Math.abs((last.x - first.x) / (Number(last.label) - Number(first.label)))
}

/** The frames that have room for their labels: every one, or every 2nd, 5th, 10th ... by number; lettered ones only where all have room. */
export function framesShown(frames: Drawing['frames'], metresBetween: number): Drawing['frames'] {
  const spacing = frameSpacing(frames)
  const every = [1, 2, 5, 10, 20, 50, 100, 200].find((n) => n * spacing >= metresBetween) ?? 500
  return every === 1 ? frames : frames.filter((f) => /^-?\d+$/.test(f.label) && Number(f.label) % every === 0)
}
