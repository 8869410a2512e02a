// Years along a strip, and metres along a ship, as places on paper.

/** A straight scale from what is shown to where it stands. */
export function scale(from: number, to: number, left: number, right: number): (v: number) => number {
  const span = to - from || 1
  return (v) => left + ((v - from) / span) * (right - left)
}

/** Round years to write along a strip, about so many. */
export function years(from: number, to: number, about: number): number[] {
  const step = [1, 2, 5, 10, 20, 50].find((s) => (to - from) / s <= about) ?? 100
  const list: number[] = []
  for (let y = Math.ceil(from / step) * step; y <= to; y += step) list.push(y)
  return list
}
