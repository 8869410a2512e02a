import type { Entry, Field, Kind } from '../api/contract'
import { csv } from '../parts/csv'

/** The column of a field: its key, with the unit where there is one. The importer reads both back. */
export function head(f: Field): string {
  return f.unit && f.unit !== '-' ? `${f.key} [${f.unit}]` : f.key
}

/** The fields of a kind that fit a cell. */
export function columns(kind: Kind): Field[] {
  return kind.fields.filter((f) => !['table', 'group', 'grid', 'hull'].includes(f.type))
}

/** An empty table to fill in away from the machine. */
export function template(kind: Kind): string {
  return csv([columns(kind).map(head)])
}

/** The entries that can name a record, best first. */
export const naming = ['name', 'title', 'number', 'what', 'question', 'item', 'description', 'place', 'frame', 'date']

/** What a record is called in a list: as the program calls it, or the first of its entries that names it. */
export function nameOf(kind: Pick<Kind, 'title'>, entry: Entry): string {
  if (entry.label) return entry.label
  const found = naming.map((key) => entry.body[key]).find((value) => typeof value === 'string' && value !== '')
  return typeof found === 'string' ? found : `${kind.title} ${entry.id.slice(-6)}`
}
