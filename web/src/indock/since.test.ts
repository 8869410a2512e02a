import { expect, it } from 'vitest'
import type { Brief } from '../api/contract'
import { back, since } from './since'

it('counts back over the end of a month', () => {
  expect(back('2027-05-02', 6)).toBe('2027-04-26')
  expect(back('2027-04-30', -1)).toBe('2027-05-01')
  expect(back('2027-05-02', Infinity)).toBe('')
})

const page = {
  lit: [{ found: 'a', state: 'late' }, { found: 'b', state: 'answered' }, { found: 'c', state: 'answered' }],
  found: [{ id: 'a', date: '2027-04-10', disposition: 'open' }, { id: 'b', date: '2027-04-10', disposition: 'leave' }, { id: 'c', date: '2027-04-11', disposition: 'insert' }],
  changes: [{ date: '2027-04-10', state: 'asked' }, { date: '2027-04-10', state: 'approved' }],
  deadlines: [{ due: '2027-04-11' }, { due: '2027-04-20' }, { due: '2027-05-20' }],
  decided: [{ id: 'b', date: '2027-04-11' }, { id: 'c', date: '2027-04-19' }],
  progress: [{ state: 'under way' }, { state: 'done', finished: '2027-04-10' }, { state: 'not begun' }],
  spells: [{ to: '2027-04-18T20:00' }, { to: '2027-04-19T20:00' }],
  films: [], leaks: [{ date: '2027-04-09', state: 'weeping' }, { date: '2027-04-09', state: 'stopped' }],
  landed: [1], blocks: [1], log: [{ date: '2027-04-19' }, { date: '2027-04-12' }],
} as unknown as Brief['indock']

it('shows today what is of today, and all that still waits', () => {
  const today = since(page, '2027-04-19', 'today')
  expect(today.found.map((f) => f.id)).toEqual(['a', 'c'])
  expect(today.lit.map((l) => l.found)).toEqual(['a', 'c'])
  expect(today.changes.length).toBe(1)
  expect(today.deadlines.map((d) => d.due)).toEqual(['2027-04-11', '2027-04-20'])
  expect(today.progress.length).toBe(1)
  expect(today.spells.length).toBe(1)
  expect(today.leaks.length).toBe(1)
  expect(today.log.length).toBe(1)
  expect(today.blocks).toEqual([])
})

it('leaves nothing out of the whole stay', () => {
  expect(since(page, '2027-04-19', 'stay')).toBe(page)
  expect(since(page, '2027-04-19', 'week').progress.map((p) => p.state)).toEqual(['under way', 'not begun'])
})
