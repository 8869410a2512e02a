import { describe, expect, it } from 'vitest'
import type { Field, SheetLine } from '../api/contract'
import { asRows, chart, plain, read } from './value'

const field = (key: string, unit = 'm'): Field => ({ key, label: key, unit, type: 'number', required: true })
const line = (value: unknown, fields: Field[]): SheetLine => ({ key: 'levers', label: 'levers', value, unit: '', text: '', fields })
const levers = [0, 10, 20, 30, 40, 50].map((angle, i) => ({ angle, lever: i * 0.05, heeling: 0.1 }))

describe('a table becomes a chart', () => {
  it('where its first column rises and the others share a unit', () => {
    const drawn = chart(line(levers, [field('angle', 'deg'), field('lever'), field('heeling')]))
    expect(drawn?.x).toEqual({ label: 'Angle', unit: 'deg' })
    expect(drawn?.series.map((s) => s.label)).toEqual(['lever', 'heeling'])
    expect(drawn?.series[0]?.points[1]).toEqual({ x: 10, y: 0.05 })
  })
  it.each([
    ['too few rows', line(levers.slice(0, 5), [field('angle'), field('lever')])],
    ['two units', line(levers, [field('angle'), field('lever', 'm'), field('heeling', 't.m')])],
    ['a hole', line(levers.map((row, i) => (i === 3 ? { angle: row.angle } : row)), [field('angle'), field('lever')])],
    ['an order that falls', line([...levers].reverse(), [field('angle'), field('lever')])],
    ['no columns named', { ...line(levers, []), fields: undefined } as unknown as SheetLine],
  ])('and not with %s', (_, one) => {
    expect(chart(one)).toBeUndefined()
  })
})

describe('a value in words', () => {
  it('is never a blank', () => {
    expect([null, undefined, ''].map((v) => plain(v))).toEqual(['unknown', 'unknown', 'unknown'])
    expect(plain(false)).toBe('no')
    expect(plain(0, 'mm')).toBe('0 mm')
    expect(plain([1, 2], 'm3')).toBe('1; 2 m³')
    expect(plain({ start_day: 'Monday', hours: 3 })).toBe('Start day: Monday; Hours: 3')
  })
  it('is the program\u2019s own text where it gave one', () => {
    expect(read({ ...line(12.7, []), text: '12.7 mm (1/2 in)' })).toBe('12.7 mm (1/2 in)')
  })
})

it('puts the whole sheet into rows', () => {
  const rows = asRows({ inputs: [{ ...line(3, []), basis: 'assumed', basis_note: 'default' }], results: [] })
  expect(rows[1]).toEqual(['input', 'levers', '', 'levers', 3, '', undefined, undefined, undefined, 'assumed', 'default'])
})
