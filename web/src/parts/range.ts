/** A scale from values to a width, with room at both ends, and round ticks. */
export interface Scale {
  at: (x: number) => number
  ticks: number[]
}

export function scale(low: number, high: number, width: number, ticks = 4): Scale {
  const span = high - low || Math.abs(high) || 1
  const from = low - span * 0.08
  const to = high + span * 0.08
  const marks = round(from, to, ticks)
  return { at: (x) => ((x - from) / (to - from)) * width, ticks: marks.filter((t, i) => i === 0 || short(t) !== short(marks[i - 1]!)) }
}

/** Round numbers between two bounds, about so many: steps of 1, 2 or 5 times a power of ten. */
export function round(from: number, to: number, about: number): number[] {
  const raw = (to - from) / Math.max(1, about)
  if (!(raw > 0) || !Number.isFinite(raw)) return []
  const power = 10 ** Math.floor(Math.log10(raw))
  const step = power * ([1, 2, 5, 10].find((m) => m * power >= raw) ?? 10)
  const first = Math.ceil(from / step)
  const last = Math.floor(to / step)
  return Array.from({ length: last - first + 1 }, (_, i) => tidy((first + i) * step))
}

/** A number to three figures, as a range wants it: never more than is known. */
export function short(x: number): string {
  if (Math.abs(x) >= 10_000) return Math.round(x).toLocaleString('en').replaceAll(',', ' ')
  if (Math.abs(x) >= 1000) return String(Math.round(x)) // a year among them
  return String(tidy(Number(x.toPrecision(3))))
}

function tidy(x: number): number {
  return Number(x.toPrecision(12))
}
