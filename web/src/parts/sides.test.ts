import { expect, it } from 'vitest'
import type { Figure } from '../api/contract'
import { said } from './sides'

const figure = (basis: Figure['basis']): Figure => ({ key: 'days', label: 'days', text: 'x', unit: 'd', basis, value: 1, worry: 0 })

it('takes a row of unknowns as unsaid, and one answer as said', () => {
  expect(said({ label: 'days', cells: [figure('unknown'), 'not said', 'not yet', ''] })).toBe(false)
  expect(said({ label: 'days', cells: [figure('unknown'), figure('assumed')] })).toBe(true)
  expect(said({ label: 'risk', cells: ['not said', 'a month lost'] })).toBe(true)
})
