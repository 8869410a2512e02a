import type { Body, Entry, Field } from '../api/contract'
import { filled, values } from '../quantity/draft'

export type Keep = 'mine' | 'theirs'

/** A version of a record in the words it was typed in, so that two versions are compared in one form. */
export function asTyped(fields: readonly Field[], e: Entry): Body {
  return values(fields, filled(fields, e.body, e.typed))
}

/** The fields in which two versions of a record differ. */
export function differing(fields: readonly Field[], mine: Body, theirs: Body): Field[] {
  return fields.filter((f) => JSON.stringify(mine[f.key]) !== JSON.stringify(theirs[f.key]))
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
