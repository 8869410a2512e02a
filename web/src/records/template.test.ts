import { expect, it } from 'vitest'
import type { Entry, Kind } from '../api/contract'
import { nameOf, template } from './template'

const kind: Kind = {
  kind: 'thickness', title: 'Thickness reading', plural: 'Thickness readings', group: 'survey', count: 0,
  fields: [
    { key: 'place', label: 'place', type: 'place', required: true },
    { key: 'thickness', label: 'thickness', type: 'number', unit: 'mm', required: true },
    { key: 'share', label: 'share', type: 'number', unit: '-', required: false },
    { key: 'echoes', label: 'echoes', type: 'table', required: false, fields: [] },
  ],
}
const entry = (body: Entry['body']): Entry => ({ kind: 'thickness', id: '0191-aabbccddeeff', version: 1, body, by: 'x', at: '' })

it('gives an empty table with the units in its heads', () => {
  expect(template(kind)).toBe('\uFEFFplace,thickness [mm],share\r\n')
})

it('calls a record by what it says of itself, or by its number', () => {
  expect(nameOf(kind, entry({ place: 'Fr 37½, C, P', name: '' }))).toBe('Fr 37½, C, P')
  expect(nameOf(kind, entry({}))).toBe('Thickness reading ddeeff')
})
