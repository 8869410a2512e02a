import { expect, it } from 'vitest'
import { headings } from './heading'
import { parts } from './parts'

const figure = { key: 'worst', label: 'thinnest plate', value: 6.1, unit: 'mm', text: '6.1 mm', basis: 'measured' }

it('shows each part of a page in the way its shape asks for', () => {
  const page = {
    heading: ['She is tight.'],
    worst: [figure],
    trend: figure,
    missing: [{ what: 'no drafts since May', worry: 1 }],
    openings: [{ name: 'sea chest', barriers: 1 }],
    remarks: ['one', 'two'],
    water: { tide: figure, empty: [] },
    none: [],
    nothing: null,
  }
  expect(parts(page, ['heading']).map((p) => [p.key, p.as])).toEqual([
    ['worst', 'figures'], ['trend', 'figure'], ['missing', 'notices'], ['openings', 'rows'], ['remarks', 'sentences'], ['water', 'group'],
  ])
})

it('heads a page with what it says', () => {
  expect(headings({ heading: ['One.', '', 'Two.'], missing: [] })).toEqual(['One.', 'Two.'])
  expect(headings({ heading: [], missing: [] })).toEqual([])
})
