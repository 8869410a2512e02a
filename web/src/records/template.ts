import type { Field, Kind } from '../api/contract'
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
