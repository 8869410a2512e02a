import { expect, it } from 'vitest'
import { entry } from '../../test/mock'
import { sent, whole } from './sent'

it('parts a form into the record and what is said of it, and puts both together again', () => {
  const form = { place: 'Fr 37', thickness: '9 mm', basis: 'measured', mark: 'board' }
  expect(sent(form)).toEqual({ body: { place: 'Fr 37', thickness: '9 mm' }, basis: 'measured', mark: 'board' })
  expect(whole({ ...entry, basis: 'measured', basis_date: '2023' }).body).toMatchObject({ ...entry.body, basis: 'measured', basis_date: '2023' })
})
