import { describe, expect, it } from 'vitest'
import { sorted } from './sort'

const of = (x: (number | string | null | undefined)[], down = false) => sorted(x, (v) => v, down)

describe('sorting', () => {
  it('puts what is not known last, both ways', () => {
    expect(of([null, 3, NaN, 1, undefined, 2])).toEqual([1, 2, 3, null, NaN, undefined])
    expect(of([null, 3, NaN, 1, undefined, 2], true)).toEqual([3, 2, 1, null, NaN, undefined])
    expect(of(['b', '', 'a'], true)).toEqual(['b', 'a', ''])
  })
  it('counts frames as people do', () => {
    expect(of(['Fr 100', 'Fr 9', 'Fr 37½', 'Fr 37'])).toEqual(['Fr 9', 'Fr 37', 'Fr 37½', 'Fr 100'])
  })
  it('keeps the order of equals and the rows it was given', () => {
    const rows = [{ n: 1, k: 'a' }, { n: 1, k: 'b' }, { n: 0, k: 'c' }]
    expect(sorted(rows, (r) => r.n, false).map((r) => r.k)).toEqual(['c', 'a', 'b'])
    expect(sorted(rows, (r) => r.n, true).map((r) => r.k)).toEqual(['a', 'b', 'c'])
    expect(rows[0]!.k).toBe('a')
  })
})
