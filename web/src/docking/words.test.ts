import { expect, it } from 'vitest'
import { words } from './words'

it('says from where her hull is seen, however often it was turned round', () => {
  const deg = Math.PI / 180
  expect(words.seen(0, 0, 1)).toBe('Seen from right ahead, level with her.')
  expect(words.seen(90 * deg, 20 * deg, 1)).toBe('Seen from port, 90° off the bow, 20° above.')
  expect(words.seen(-60 * deg, -10 * deg, 2)).toBe('Seen from starboard, 60° off the bow, 10° below, 2.0 times closer.')
  expect(words.seen(300 * deg, 0, 0.5)).toBe('Seen from starboard, 60° off the bow, level with her, 2.0 times further off.')
  expect(words.seen(-540 * deg, 0, 1)).toBe('Seen from right astern, level with her.')
})
