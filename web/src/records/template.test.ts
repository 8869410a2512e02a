import { expect, it } from 'vitest'
import type { Kind } from '../api/contract'
import { template } from './template'

const kind: Kind = {
  kind: 'thickness', title: 'Thickness reading', plural: 'Thickness readings', group: 'survey', count: 0, name: 'thickness', about: '', file: 'thickness.csv',
  fields: [
    { key: 'place', label: 'place', type: 'place', required: true },
    { key: 'thickness', label: 'thickness', type: 'number', unit: 'mm', required: true },
    { key: 'share', label: 'share', type: 'number', unit: '-', required: false },
    { key: 'echoes', label: 'echoes', type: 'table', required: false, fields: [] },
  ],
}
it('gives an empty table with the units in its heads', () => {
  expect(template(kind)).toBe('\uFEFFplace,thickness [mm],share\r\n')
})
