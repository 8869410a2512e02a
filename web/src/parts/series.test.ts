import { expect, it } from 'vitest'
import { ends, sentence, table } from './series'

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

it('keeps the names at the ends of lines apart', () => {
  const line = (label: string, y: number) => ({ label, points: [{ x: 0, y: 0 }, { x: 1, y }] })
  const at = ends([line('a', 100), line('b', 99.9), line('c', 10)], [], 250)
  expect(at.map((n) => n.label)).toEqual(['a', 'b', 'c'])
  expect(at[0]!.y - at[1]!.y).toBeGreaterThanOrEqual((100 / 200) * 16 - 1e-9)
  expect(at[2]!.y).toBe(10)
})
