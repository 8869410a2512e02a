import { expect, it } from 'vitest'
import { sentence, table } from './series'

const gain = { label: 'likely', points: [{ x: 2026, y: 3350, low: 3340, high: 3362 }, { x: 2027, y: 3357, low: 3345, high: 3371 }] }
const found = { label: 'found', points: [{ x: 2025, y: 3344 }, { x: 2026, y: 3351 }] }

it('puts the table behind a chart, with nothing where a line has no point', () => {
  expect(table({ label: 'year' }, [gain, found])).toEqual({
    head: ['year', 'likely', 'likely, low', 'likely, high', 'found'],
    rows: [[2025, undefined, undefined, undefined, 3344], [2026, 3350, 3340, 3362, 3351], [2027, 3357, 3345, 3371, undefined]],
  })
})

it('says a chart in a sentence', () => {
  expect(sentence('Weight', { label: 'weight', unit: 't' }, [gain, { label: 'none', points: [] }])).toBe('Weight. likely: 3350 → 3357 t')
})
