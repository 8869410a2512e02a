import { expect, it } from 'vitest'
import type { Entry, Field } from '../api/contract'
import { asTyped, differing, merged } from './conflict'

const fields: Field[] = [
  { key: 'place', label: 'place', type: 'text', required: true },
  { key: 'thickness', label: 'thickness', type: 'number', unit: 'mm', required: false },
  { key: 'note', label: 'note', type: 'text', required: false },
  { key: 'date', label: 'date', type: 'date', required: false },
]
const kept: Entry = {
  kind: 'thickness', id: '1', version: 4, label: '', by: 'A. Venn', at: '', typed: { thickness: '.358 in' },
  body: { place: 'Fr 37, C, P', thickness: 9.1, note: 'wet behind' },
}
const theirs = asTyped(fields, kept)
const mine = { place: 'Fr 37, C, P', thickness: '8.9 mm', date: '2026-05-01' }

it('compares what was typed, not how it is kept', () => {
  expect(theirs).toEqual({ place: 'Fr 37, C, P', thickness: '.358 in', note: 'wet behind' })
  expect(differing(fields, mine, theirs).map((f) => f.key)).toEqual(['thickness', 'note', 'date'])
  expect(differing(fields, { ...theirs, thickness: '.358 in' }, theirs)).toEqual([])
})

it('keeps theirs unless mine was chosen', () => {
  expect(merged(fields, mine, theirs, {})).toEqual(theirs)
  expect(merged(fields, mine, theirs, { thickness: 'mine', note: 'mine', date: 'mine' })).toEqual(mine)
})
