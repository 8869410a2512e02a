// The map of the shell as rectangles: neighbours of one kind are drawn as one.
import type { ShellCell, ShellMap } from '../api/contract'

export type Shown = 'lost' | 'sd' | 'below'
/** 0 to 3 is how much, by pattern; the others say why nothing can be said. */
export type Kind = 0 | 1 | 2 | 3 | 'far' | 'covered' | 'bare'

const steps: Record<Shown, [number, number, number]> = { lost: [0.1, 0.2, 0.25], sd: [0.3, 0.6, 1], below: [0.05, 0.2, 0.5] }

export function kindOf(cell: ShellCell, shown: Shown): Kind {
  if (cell.state === 'far' || cell.state === 'covered' || cell.state === 'bare') return cell.state
  const [a, b, c] = steps[shown]
  const v = cell[shown]
  return v < a ? 0 : v < b ? 1 : v < c ? 2 : 3
}

export interface Run {
  x: number
  girth: number
  length: number
  kind: Kind
}

/** Rows of cells, joined along the ship. */
export function runs(map: ShellMap, shown: Shown): Run[] {
  const rows = new Map<number, ShellCell[]>()
  for (const cell of map.cells) {
    const row = rows.get(cell.girth)
    if (row) row.push(cell)
    else rows.set(cell.girth, [cell])
  }
  const list: Run[] = []
  for (const [girth, row] of rows) {
    row.sort((a, b) => a.x - b.x)
    let last: Run | undefined
    for (const cell of row) {
      const kind = kindOf(cell, shown)
      const from = cell.x - map.cell_x / 2
      if (last && last.kind === kind && from - (last.x + last.length) < map.cell_x / 4) last.length = cell.x + map.cell_x / 2 - last.x
      else list.push((last = { x: from, girth, length: map.cell_x, kind }))
    }
  }
  return list
}

export function fillOf(kind: Kind): string {
  if (kind === 'far') return 'url(#fill-far)'
  if (kind === 'covered') return 'url(#fill-covered)'
  if (kind === 'bare') return 'var(--line-faint)'
  return kind ? `url(#fill-${kind})` : 'var(--paper)'
}
