import { expect, it } from 'vitest'
import { bodyOf, draftOf, faults, numberOf, without } from './draft'
import { asked, sheets } from './sheets'

const found = sheets.find((s) => s.name === 'found')!
const film = sheets.find((s) => s.name === 'film')!

it('asks for the measure by which a finding is judged', () => {
  const keys = (finding: string) => asked(found, { finding }).flatMap((a) => ('key' in a ? [a.key] : []))
  expect(keys('bearing')).toContain('clearance')
  expect(keys('coating')).toContain('share')
  expect(keys('crack')).toEqual(expect.arrayContaining(['length', 'depth']))
  expect(keys('other')).toContain('count')
  expect(keys('plate')).not.toContain('clearance')
})

it('leaves out of a record what is not asked any more', () => {
  const draft = { finding: 'plate', thickness: '7,9', clearance: '6' } // a bearing at first
  expect(bodyOf(found, draft)).toEqual({ finding: 'plate', thickness: 7.9 })
  expect(faults(found, { finding: 'plate', clearance: 'wide' }, false)).toEqual([])
})

it('opens a record again as it was tapped', () => {
  const draft = { zone: 'z', frame: '12', readings: '120 131', nominal: '125' }
  const body = bodyOf(film, draft)
  expect(body.readings).toEqual([120, 131])
  expect(draftOf(film, body)).toEqual(draft)
  expect(without(film, { ...body, date: '2027-04-08' })).toEqual({ date: '2027-04-08' })
})

it('asks a share in hundredths and keeps a part of one', () => {
  const draft = { finding: 'coating', share: '7' }
  const body = bodyOf(found, draft)
  expect(body.share).toBeCloseTo(0.07, 12)
  expect(draftOf(found, body)).toEqual(draft)
  expect(faults(found, { finding: 'coating', share: '140' }, false).length).toBe(1)
})

it('reads numbers as people write them, and no others', () => {
  expect([numberOf('4,5'), numberOf('−3'), numberOf('.465'), numberOf('1e3'), numberOf('')]).toEqual([4.5, -3, 0.465, undefined, undefined])
})
