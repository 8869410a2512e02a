/** What a row is ordered by. Nothing known is neither small nor large: it comes last either way. */
export type Order = number | string | null | undefined

const words = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' })

/** A sorted copy; rows that are equal keep their order. */
export function sorted<Row>(rows: readonly Row[], order: (row: Row) => Order, down: boolean): Row[] {
  return [...rows].sort((a, b) => compare(order(a), order(b), down))
}

function compare(a: Order, b: Order, down: boolean): number {
  const nothing = Number(absent(a)) - Number(absent(b))
  if (nothing !== 0 || absent(a)) return nothing
  const way = typeof a === 'number' && typeof b === 'number' ? a - b : words.compare(String(a), String(b))
  return down ? -way : way
}

function absent(x: Order): boolean {
  return x === null || x === undefined || x === '' || Number.isNaN(x)
}
