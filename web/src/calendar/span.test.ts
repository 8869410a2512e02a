import { expect, it } from 'vitest'
import { around, axis, dayNumber, fitsIn, isoDay, short } from './span'

it('counts days across months, years and leap days', () => {
  expect(dayNumber('2028-03-01') - dayNumber('2028-02-28')).toBe(2)
  expect(dayNumber('2028-01-01') - dayNumber('2026-01-01')).toBe(730)
  expect(isoDay(dayNumber('2027-10-31'))).toBe('2027-10-31')
})

it('puts days on a width, the last day whole', () => {
  const a = axis('2027-04-01', '2027-04-10', 200)
  expect(a.at('2027-04-01')).toBe(0)
  expect(a.after('2027-04-10')).toBe(200)
  expect(a.at('2027-04-06')).toBe(100)
  expect(a.at('2026-01-01')).toBe(0)
  expect(a.after('2029-01-01')).toBe(200)
})

it('ticks days where there is room, and months where not', () => {
  const near = axis('2027-04-28', '2027-05-12', 450)
  expect(near.ticks[0]).toMatchObject({ label: '28', under: 'Apr 2027' })
  expect(near.ticks.find((t) => t.under === 'May 2027')).toMatchObject({ label: '1' })
  const far = axis('2026-11-01', '2028-01-31', 1200)
  expect(far.ticks.map((t) => t.label).slice(0, 3)).toEqual(['Nov', 'Dec', 'Jan'])
  expect(far.ticks.map((t) => t.under).filter(Boolean)).toEqual(['2026', '2027', '2028'])
  expect(axis('2026-11-01', '2028-01-31', 320).ticks[0]?.label).toBe('N')
})

it('looks closer with a margin, and writes days for people', () => {
  expect(around('2027-03-01', '2027-03-05', 3)).toEqual({ from: '2027-02-26', to: '2027-03-08' })
  expect(short('2027-09-05')).toBe('5 Sep 2027')
  expect(fitsIn('she may be towed', 60)).toBe(false)
  expect(fitsIn('free', 60)).toBe(true)
})
