import { expect, it } from 'vitest'
import { verdict } from './verdict'

const figure = (worry: number) => ({ key: 'k', label: 'l', text: '1', unit: 'mm', basis: 'computed', worry })

it('counts a row once, by the worst of its figures, the worst first', () => {
  expect(verdict([{ life: figure(2), rate: figure(3) }, { life: figure(2) }, { life: figure(0), place: 'fr 3' }])).toBe('3 in all: 1 now, 1 act')
})

it('takes the worry of a notice itself', () => {
  expect(verdict([{ what: 'a patch', worry: 2 }, { what: 'another' }])).toBe('2 in all: 1 act')
})

it('says nothing of soundness where nothing asks', () => {
  expect(verdict([{ place: 'fr 3' }])).toBe('1 in all')
})

it('says where nothing is entered', () => {
  expect(verdict([])).toBe('nothing entered yet')
})
