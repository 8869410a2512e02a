import { describe, expect, it } from 'vitest'
import { drawing } from '../../test/mock'
import type { Drawing, Mark, Point } from '../api/contract'
import { along, hasForm, hullOnly, known, picture, views } from './picture'

const d = drawing()
const mark = (more: Partial<Mark>): Mark => ({ kind: 'gland', id: '1', label: '', place: '', x: 10, y: 3, z: 2, girth: 2.6, side: 'P', worry: 0, ...more })

describe('her drawing', () => {
  it.each(views)('has lines inside its edges: %s', (name) => {
    const { lines, content } = picture(name, d)
    expect(lines.length).toBeGreaterThan(3)
    for (const [x, y] of lines.flatMap((l) => l.points)) {
      expect(x).toBeGreaterThanOrEqual(content.x)
      expect(x).toBeLessThanOrEqual(content.x + content.w)
      expect(y).toBeGreaterThanOrEqual(content.y)
      expect(y).toBeLessThanOrEqual(content.y + content.h)
    }
  })

  it('puts port above and starboard below, seen with the bow to the right', () => {
    for (const name of ['plan', 'shell'] as const) {
      const { places } = picture(name, d)
      expect(places(mark({ side: 'P' }))[0]![1]).toBeLessThan(0)
      expect(places(mark({ side: 'S', y: -3 }))[0]![1]).toBeGreaterThan(0)
      expect(places(mark({ side: 'C' }))).toEqual([[10, 0]])
      expect(places(mark({ side: 'B' }))).toHaveLength(2)
    }
  })

  it('lays the shell out by girth, and the profile by height', () => {
    expect(picture('shell', d).places(mark({}))).toEqual([[10, -2.6]])
    expect(picture('profile', d).places(mark({}))).toEqual([[10, -2]])
  })

  it('shows forward sections on the right of the body plan and after ones on the left', () => {
    const { places } = picture('sections', d)
    expect(places(mark({ x: 80 }))[0]![0]).toBe(3)
    expect(places(mark({ x: 10 }))[0]![0]).toBe(-3)
  })

  it('stands a mark nowhere while its place is not known', () => {
    const bare: Mark = { kind: 'leak', id: '2', label: '', place: 'somewhere aft', x: 10, side: 'P', worry: 0 }
    for (const name of views) expect(picture(name, d).places(bare)).toEqual([])
  })

  it('shows a mark once in each view of the whole sheet, one under the other', () => {
    const [profile, plan, shell] = picture('sheet', d).places(mark({}))
    expect(profile![1]).toBeLessThan(plan![1])
    expect(plan![1]).toBeLessThan(shell![1])
  })

  it('leaves a view out of the sheet while nothing of it is known', () => {
    const bare: Drawing = { ...d, strakes: [], shell: { edge: [], lines: [] } }
    expect(picture('sheet', bare).places(mark({}))).toHaveLength(2)
    expect(known(bare)).toEqual(['sheet', 'profile', 'plan', 'sections'])
    expect(hasForm({ ...d, profile: { outline: [], deck: [], waterlines: [] } })).toBe(false)
  })
})

it('reads a line between its points and nothing beyond them', () => {
  const line: [number, number][] = [[0, 1], [10, 3]]
  expect([0, 5, 10].map((x) => along(line, x))).toEqual([1, 2, 3])
  expect([-1, 11].map((x) => along(line, x))).toEqual([0, 0])
})

describe('what the lines of the hull do not show', () => {
  it('draws the water as it stands at either end, a little beyond her', () => {
    const water = picture('profile', d).lines.find((l) => l.weight === 'water')!
    const [aft, fore] = water.points as [Point, Point]
    expect(aft[0]).toBeLessThan(d.particulars.aft)
    expect(fore[0]).toBeGreaterThan(d.particulars.fore)
    expect((aft[1] - fore[1]) / (aft[0] - fore[0])).toBeCloseTo(0.5 / d.particulars.length, 9) // half a metre deeper aft
    expect(picture('profile', { ...d, water: undefined } as Drawing).lines.some((l) => l.weight === 'water')).toBe(false)
  })

  it('leaves out what stands above the deck where only her hull is asked for, and keeps what is under water', () => {
    const high = (of: Drawing) => Math.min(...picture('profile', of).lines.flatMap((l) => l.points).map(([, y]) => y))
    expect(high(d)).toBe(-18)
    expect(high(hullOnly(d))).toBeGreaterThanOrEqual(-d.particulars.depth - 3)
    expect(hullOnly(d).gear.map((g) => g.id)).toEqual(['screw'])
  })

  it('draws the port gear to port in the plan, and one side of it in the body plan', () => {
    expect(picture('plan', d).lines.some((l) => l.points.every(([x, y]) => x === 1 && y < 0))).toBe(true)
    expect(picture('sections', d).lines.filter((l) => l.points.every(([, y]) => y === -2))).toHaveLength(1)
  })
})
