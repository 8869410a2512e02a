import { expect, it } from 'vitest'
import { newest } from './ask'

it('asks one at a time, and only the newest of what came meanwhile', async () => {
  const asked: number[] = []
  const took: number[] = []
  const open: ((n: number) => void)[] = []
  const work = newest((q: number) => {
    asked.push(q)
    return new Promise<number>((done) => open.push(done))
  }, (a) => took.push(a), () => undefined)
  for (const q of [1, 2, 3, 4]) work(q)
  expect(asked).toEqual([1])
  open[0]!(10)
  await new Promise((r) => setTimeout(r))
  expect(asked).toEqual([1, 4])
  open[1]!(40)
  await new Promise((r) => setTimeout(r))
  expect(took).toEqual([10, 40])
})
