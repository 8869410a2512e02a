import { expect, it } from 'vitest'
import { yearFrom } from './year'

it('counts on from the day', () => {
  expect(yearFrom('2026-01-01', 0)).toBe(2026)
  expect(yearFrom('2026-07-02', 2)).toBeCloseTo(2028.5, 2)
})
