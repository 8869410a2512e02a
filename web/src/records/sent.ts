import type { Body, Entry, Field, Sent } from '../api/contract'
import { text } from '../text'

/** What every record says beside its own fields: how it is known, and who may see it. */
export const headFields: Field[] = [
  { key: 'basis', label: text.head.basis, type: 'enum', enum: ['measured', 'documented', 'assumed', 'computed', 'unknown'], required: false },
  { key: 'basis_note', label: text.head.note, help: text.head.noteHelp, type: 'text', required: false },
  { key: 'basis_date', label: text.head.date, type: 'date', required: false },
  { key: 'mark', label: text.head.mark, help: text.head.markHelp, type: 'enum', enum: ['private', 'board', 'public'], required: false },
]

/** A form's body, parted into the record's own fields and its head. */
export function sent(body: Body): Sent {
  const heads = headFields.map((f) => f.key)
  const own = Object.fromEntries(Object.entries(body).filter(([key]) => !heads.includes(key)))
  const head = Object.fromEntries(Object.entries(body).filter(([key]) => heads.includes(key)))
  return { ...head, body: own }
}

/** A record with its head among its fields, as one form shows it. */
export function whole(e: Entry): Entry {
  const { basis, basis_note, basis_date, mark } = e
  return { ...e, body: { ...e.body, basis, basis_note, basis_date, mark } }
}
