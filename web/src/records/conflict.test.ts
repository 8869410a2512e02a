import { expect, it } from 'vitest'
import type { Field } from '../api/contract'
import { differing, merged } from './conflict'

const field = (key: string): Field => ({ key, label: key, type: 'text', required: false })
const fields = ['place', 'thickness', 'note', 'date'].map(field)

const theirs = { place: 'Fr 37, C, P', thickness: 9.1, note: 'wet behind', by: 'kept' }
const mine = { place: 'Fr 37, C, P', thickness: '8.9 mm', date: '2026-05-01' }

it('shows only what differs, whatever form it is kept in', () => {
  expect(differing(fields, mine, theirs).map((f) => f.key)).toEqual(['thickness', 'note', 'date'])
  expect(differing(fields, { thickness: '9.1' }, { thickness: 9.1 })).toEqual([])
  expect(differing(fields, { thickness: '.465 in' }, { thickness: { value: 11.811, unit: 'mm', typed: '.465 in' } })).toEqual([])
  expect(differing(fields, { note: '' }, {})).toEqual([])
})

it('keeps theirs unless mine was chosen, and loses nothing that the form does not know', () => {
  expect(merged(fields, mine, theirs, {})).toEqual(theirs)
  expect(merged(fields, mine, theirs, { thickness: 'mine', note: 'mine', date: 'mine' })).toEqual({
    place: 'Fr 37, C, P', thickness: '8.9 mm', date: '2026-05-01', by: 'kept',
  })
})
