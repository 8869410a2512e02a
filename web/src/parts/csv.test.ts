import { expect, it } from 'vitest'
import { csv } from './csv'

it('writes what RFC 4180 asks, and nothing that a spreadsheet would run', () => {
  expect(csv([['place', 'thickness [mm]'], ['Fr 37½, C', 9.1], ['said "thin"', null], ['=1+1', -4], ['-cmd', '+2']])).toBe(
    '\uFEFFplace,thickness [mm]\r\n"Fr 37½, C",9.1\r\n"said ""thin""",\r\n\'=1+1,-4\r\n\'-cmd,+2\r\n',
  )
})
