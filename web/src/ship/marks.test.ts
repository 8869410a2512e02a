import { describe, expect, it } from 'vitest'
import type { Mark, Worry } from '../api/contract'
import { framesShown, kinds, numbered, spots } from './marks'

const mark = (id: string, x: number, worry: Worry = 0, kind = 'thickness'): Mark => ({
  kind, id, label: id, place: '', x, y: 0, z: 0, girth: 0, side: 'P', worry,
})

const marks = [mark('a', 50), mark('b', 10, 2), mark('c', 30, 2), mark('d', 5, 3, 'gland')]

it('numbers the worst first, then from aft forward', () => {
  expect(numbered(marks, '').map(({ n, mark: m }) => `${n}${m.id}`)).toEqual(['1d', '2b', '3c', '4a'])
  expect(numbered(marks, 'thickness').map(({ mark: m }) => m.id)).toEqual(['b', 'c', 'a'])
  expect(marks[0]!.id).toBe('a')
})

it('counts the kinds', () => {
  expect(kinds(marks)).toEqual([['gland', 1], ['thickness', 3]])
})

describe('room for numbers', () => {
  const at = (m: Mark): [number, number][] => [[m.x, 0]]
  const all = { x: -1, y: -1, w: 1000, h: 2 }
  const roomy = (gap: number, chosen?: string) =>
    spots(numbered(marks, ''), at, all, gap, chosen).filter((s) => s.roomy).map((s) => s.mark.id).sort()

  it('goes to all that stand apart', () => {
    expect(roomy(4)).toEqual(['a', 'b', 'c', 'd'])
  })
  it('goes to the worse of two that stand close', () => {
    expect(roomy(6)).toEqual(['a', 'c', 'd'])
  })
  it('always goes to the chosen one', () => {
    expect(roomy(6, 'b')).toEqual(['a', 'b', 'c'])
  })
  it('holds across the squares that are looked up', () => {
    const line = Array.from({ length: 79 }, (_, i) => mark(String(i), i * 0.7))
    const taken = spots(numbered(line, ''), at, all, 3, undefined).filter((s) => s.roomy).map((s) => s.at[0]).sort((a, b) => a - b)
    for (let i = 1; i < taken.length; i++) expect(taken[i]! - taken[i - 1]!).toBeGreaterThanOrEqual(3)
    expect(taken.length).toBeGreaterThan(14)
  })
  it('goes only to those that ask for something where many are seen, and to all again from closer', () => {
    const line = Array.from({ length: 900 }, (_, i) => mark(String(i), i, i % 100 === 0 ? 2 : 0))
    const numbers = (w: number) => spots(numbered(line, ''), at, { x: -1, y: -1, w, h: 2 }, 0.5, undefined).filter((s) => s.roomy).length
    expect(numbers(1000)).toBe(9)
    expect(numbers(50)).toBe(50)
  })
  it('draws dots that would cover each other once', () => {
    const heap = Array.from({ length: 500 }, (_, i) => mark(String(i), (i % 10) * 0.001))
    expect(spots(numbered(heap, ''), at, all, 4, undefined)).toHaveLength(1)
  })
})

describe('frame labels', () => {
  const frames = ['B', 'A', ...Array.from({ length: 151 }, (_, i) => String(i))].map((label, i) => ({ label, x: (i - 2) * 0.61 }))
  it('are all there when there is room', () => {
    expect(framesShown(frames, 0.5)).toHaveLength(153)
  })
  it('are thinned by their numbers, where only every fifth is named', () => {
    const fifth = frames.filter((f) => Number(f.label) % 5 === 0)
    expect(framesShown(fifth, 5).slice(0, 3).map((f) => f.label)).toEqual(['0', '10', '20'])
    expect(framesShown(fifth, 2.9).slice(0, 3).map((f) => f.label)).toEqual(['0', '5', '10'])
  })
  it('are thinned to round numbers when there is not', () => {
    expect(framesShown(frames, 5).slice(0, 3).map((f) => f.label)).toEqual(['0', '10', '20'])
    expect(framesShown(frames, 1.1).slice(0, 3).map((f) => f.label)).toEqual(['0', '2', '4'])
  })
})
