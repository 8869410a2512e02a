import { expect, it } from 'vitest'
import { brief } from '../../test/mock'
import { columnsOf, orderOf, textOf } from './rows'

const [gland, plate, behind] = brief.front.worst
const rows = [
  { kind: 'gland', id: '1', what: 'Port gland', flow: gland, state: '', parts: [{ a: 1 }], warnings: [] },
  { kind: 'plate', id: '2', what: 'C 37', flow: plate, state: '', parts: [], warnings: ['thin', 'wet'] },
]

it('shows what rows say, and leaves what is a thing within a thing to a page of its own', () => {
  expect(columnsOf(rows)).toEqual(['what', 'flow', 'warnings'])
  expect(columnsOf([])).toEqual([])
})

it('reads and orders figures by what they say', () => {
  expect(rows.map((row) => textOf(row.flow))).toEqual(['12 to 31 l/min', '6.1 mm'])
  expect(textOf(rows[1]!.warnings)).toBe('thin; wet')
  expect([gland, plate, behind].map(orderOf)).toEqual([19, 6.1, null])
})
