import type { Figure } from '../api/contract'

/** One of the things to choose between. */
export interface SideColumn {
  key: string
  name: string
  href: string
  /** Said under its name: that the plan takes it. */
  marks: string[]
  /** It stands out. */
  strong?: boolean
}

export interface SideRow {
  label: string
  /** One for each column, in the columns' order. */
  cells: (Figure | string)[]
}

export interface SideGroup {
  name: string
  rows: SideRow[]
}

/** Whether a row says anything of any of the columns: words that only say "not said" or "not yet" don't. */
export function said(row: SideRow): boolean {
  return row.cells.some((c) => (typeof c === 'string' ? c !== '' && !unsaid.includes(c) : c.basis !== 'unknown'))
}

/** What the program writes where nobody has said anything. */
const unsaid = ['not said', 'not yet']
