import type { Snippet } from 'svelte'
import type { Order } from './sort'

/** One column of a table: what its cells say and what they are ordered by. */
export interface Column<Row> {
  key: string
  label: string
  unit?: string
  /** The cell as text, for the screen, the reader and the CSV. */
  text: (row: Row) => string
  order?: (row: Row) => Order
  /** Figures stand on the right, in tabular figures. */
  number?: boolean
  /** What is shown instead of the text; told the row and the column's key. */
  cell?: Snippet<[Row, string]>
  /** On a phone it stands without its name before it: a button says itself what it does. */
  bare?: boolean
}
