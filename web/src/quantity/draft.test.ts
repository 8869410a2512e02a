import { describe, expect, it } from 'vitest'
import type { Field } from '../api/contract'
import { below, blank, bounds, filled, missing, pasted, values } from './draft'
import { unitText } from './unit'

const field = (key: string, more: Partial<Field> = {}): Field => ({ key, label: key, type: 'number', required: true, ...more })
const zone = [field('area', { unit: 'm2' }), field('kind', { type: 'text', required: false })]
const fields = [
  field('thickness', { unit: 'mm', over: 0, max: 60 }),
  field('year', { type: 'integer', default: '1996' }),
  field('note', { type: 'text', required: false }),
  field('maxima', { type: 'list', required: false }),
  field('zones', { type: 'table', fields: zone }),
  field('limit', { type: 'group', required: false, fields: [field('share'), field('plus')] }),
]

describe('a form', () => {
  it('sends what was typed, as typed, and leaves out what was not', () => {
    const draft = blank(fields)
    draft.thickness = ' .465 in '
    draft.maxima = '1,2\n3.4; 5'
    draft.zones = [{ area: '12', kind: '' }, { area: '', kind: '' }]
    expect(values(fields, draft)).toEqual({ thickness: '.465 in', maxima: ['1,2', '3.4', '5'], zones: [{ area: '12' }] })
  })

  it('never turns an empty entry into zero', () => {
    expect(values(fields, blank(fields))).toEqual({})
  })

  it('sends a range in the declared unit', () => {
    const draft = { ...blank(fields), thickness: { low: '8', likely: '', high: '18' } }
    expect(values(fields, draft).thickness).toEqual({ low: '8', high: '18', unit: 'mm' })
  })

  it('names what is missing by its path', () => {
    const draft = blank(fields)
    draft.zones = [{ area: '12', kind: '' }, { area: '', kind: 'mud' }]
    expect(missing(fields, draft)).toEqual({ thickness: 'thickness is needed', 'zones[1].area': 'area is needed' })
  })

  it('asks for the rest of an optional part only once it is begun', () => {
    const draft = { ...blank(fields), thickness: '9', zones: [{ area: '1' }] }
    expect(missing(fields, draft)).toEqual({})
    expect(missing(fields, { ...draft, limit: { share: '0.25', plus: '' } })).toEqual({ 'limit.plus': 'plus is needed' })
  })

  it('shows what is already there so that it comes back the same', () => {
    const body = { thickness: { value: 0.465, unit: 'in' }, year: 1931, zones: [{ area: 3, kind: 'bow' }], maxima: [1, 2] }
    const draft = filled(fields, body)
    expect(draft).toMatchObject({ thickness: '0.465 in', year: '1931', note: '', maxima: '1\n2', zones: [{ area: '3', kind: 'bow' }] })
    expect(filled(fields, { thickness: 11.9 }, { thickness: '15/32"' }).thickness).toBe('15/32"')
    expect(filled(fields, { zones: [{ area: 3 }], maxima: [1, 2] }, { 'zones[0].area': '32 sq ft', 'maxima[1]': '0.08 in' })).toMatchObject({
      zones: [{ area: '32 sq ft' }], maxima: '1\n0.08 in',
    })
    expect(filled([field('ok', { type: 'boolean' })], { ok: false }).ok).toBe('no')
  })
})

describe('a block from a spreadsheet', () => {
  it('fills rows from the cell it is pasted into', () => {
    expect(pasted(zone, 'area', '12\tbow\n7,5\taft\n')).toEqual([{ area: '12', kind: 'bow' }, { area: '7,5', kind: 'aft' }])
    expect(pasted(zone, 'kind', 'bow\nmid\textra')).toEqual([{ area: '', kind: 'bow' }, { area: '', kind: 'mid' }])
  })
  it('of one cell is left to the field', () => {
    expect(pasted(zone, 'area', '12')).toBeUndefined()
  })
})

it('says the limits of a field in words', () => {
  expect(bounds(fields[0]!)).toBe('more than 0, at most 60')
  expect(bounds(field('free'))).toBe('')
})

it('knows which part of a form is at fault', () => {
  const wrong = { 'zones[1].area': 'x' }
  expect(below(wrong, 'zones')).toBe(true)
  expect(below(wrong, 'zone')).toBe(false)
})

it.each([
  ['m3/s', 'm³/s'], ['t.m/cm', 't·m/cm'], ['degC', '°C'], ['-', ''], ['', ''], ['N.m2', 'N·m²'], ['mm/y', 'mm/y'], ['kg/m3', 'kg/m³'],
])('writes the unit %s as %s', (key, written) => {
  expect(unitText(key)).toBe(written)
})
