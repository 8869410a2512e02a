import { expect, it } from 'vitest'
import { round, scale, short } from './range'

it('puts round numbers on the scale', () => {
  expect(round(0, 10, 5)).toEqual([0, 2, 4, 6, 8, 10])
  expect(round(-0.13, 0.31, 4)).toEqual([0, 0.2])
  expect(round(2026.4, 2041.2, 4)).toEqual([2030, 2035, 2040])
  expect(round(3, 3, 4)).toEqual([])
})

it('keeps the ends off the edge and the order of values', () => {
  const s = scale(8, 18, 200)
  expect(s.at(8)).toBeGreaterThan(0)
  expect(s.at(18)).toBeLessThan(200)
  expect(s.at(13)).toBeCloseTo(100)
})

it('says no year twice', () => {
  expect(scale(2026.9, 2028.3, 200).ticks.map(short)).toEqual(['2027', '2028'])
})

it('has room for one value alone', () => {
  expect(scale(5, 5, 100).at(5)).toBeGreaterThan(0)
  expect(scale(0, 0, 100).at(0)).toBeCloseTo(50, 0)
})

it('never shows more figures than a range carries', () => {
  expect([0.012345, 9.0999, 14.96, 1234567].map(short)).toEqual(['0.0123', '9.1', '15', '1 234 567'])
})
