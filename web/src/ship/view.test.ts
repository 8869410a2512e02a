import { beforeEach, expect, it } from 'vitest'
import { View } from './view.svelte'

let view: View
beforeEach(() => {
  view = new View()
  view.show({ x: 0, y: -10, w: 100, h: 10 }, 500, 100)
})

it('begins with the whole ship in the window', () => {
  const { x, y, w, h } = view.box
  expect(view.whole).toBe(true)
  expect(x).toBeLessThan(0)
  expect(x + w).toBeGreaterThan(100)
  expect(y).toBeLessThan(-10)
  expect(y + h).toBeGreaterThan(0)
})

it('keeps what is under the pointer under it', () => {
  view.closer(4)
  const before = view.at(120, 40)
  view.closer(1.5, 120, 40)
  const after = view.at(120, 40)
  expect(after[0]).toBeCloseTo(before[0])
  expect(after[1]).toBeCloseTo(before[1])
})

it('never loses the ship, nor goes wider than the whole of her', () => {
  view.closer(10)
  view.move(1e6, -1e6)
  expect(view.cx).toBe(0)
  expect(view.cy).toBe(0)
  view.closer(1e-6)
  expect(view.whole).toBe(true)
  expect(view.cx).toBe(50)
})

it('brings a place in only when it is outside', () => {
  view.closer(5)
  const { cx } = view
  view.bring([52, -5])
  expect(view.cx).toBe(cx)
  view.bring([95, -5])
  expect(view.cx).toBe(95)
})

it('answers the keys it knows and leaves the others', () => {
  expect(view.key('+')).toBe(true)
  expect(view.whole).toBe(false)
  const { cx } = view
  view.key('ArrowRight')
  expect(view.cx).toBeGreaterThan(cx)
  view.key('0')
  expect(view.whole).toBe(true)
  expect(view.key('Tab')).toBe(false)
})
