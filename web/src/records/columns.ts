import type { Field, Kind } from '../api/contract'

/** The fields of a kind that fit a cell. */
export function columns(kind: Kind): Field[] {
  return kind.fields.filter((f) => !['table', 'group', 'grid', 'hull'].includes(f.type))
}
