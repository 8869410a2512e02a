import type { Body, Field } from '../api/contract'

export type Keep = 'mine' | 'theirs'

/** The fields in which two versions of a record differ. */
export function differing(fields: readonly Field[], mine: Body, theirs: Body): Field[] {
  return fields.filter((f) => !same(mine[f.key], theirs[f.key]))
}

/** One body made of both: theirs, with mine where mine was chosen. */
export function merged(fields: readonly Field[], mine: Body, theirs: Body, keep: Record<string, Keep>): Body {
  const body: Body = { ...theirs }
  for (const f of differing(fields, mine, theirs)) {
    if (keep[f.key] !== 'mine') continue
    if (mine[f.key] === undefined) delete body[f.key]
    else body[f.key] = mine[f.key]
  }
  return body
}

/** What was typed and what the program keeps may differ in form only: 9.1, "9.1" and {"value": 9.1, "typed": "9.1"} are one entry. */
function same(a: unknown, b: unknown): boolean {
  return JSON.stringify(bare(a)) === JSON.stringify(bare(b))
}

function bare(value: unknown): unknown {
  if (value === undefined || value === null || value === '') return null
  if (typeof value === 'number' || typeof value === 'boolean') return String(value)
  if (Array.isArray(value)) return value.map(bare)
  if (typeof value !== 'object') return value
  const { typed, value: inner, unit } = value as Body
  if (typed) return typed
  if (inner !== undefined) return unit ? `${inner} ${unit}` : String(inner)
  return Object.entries(value).map(([key, one]) => [key, bare(one)])
}
