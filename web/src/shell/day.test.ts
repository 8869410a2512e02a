import { expect, test } from 'vitest'
import { dayOf } from './day'

test('a day is read however its parts are set off', () => {
  for (const typed of ['2026-11-30', '2026/11/30', '20261130', ' 2026.11.30 ', '2026 11 30']) expect(dayOf(typed)).toBe('2026-11-30')
  expect(dayOf('2026-3-9')).toBe('2026-03-09')
  expect(dayOf('2028-02-29')).toBe('2028-02-29')
})

test('what is no day is none', () => {
  for (const typed of ['2027-02-29', '11/30/2026', '2026-13-01', '2026-11-31', 'today', '']) expect(dayOf(typed)).toBeUndefined()
})
