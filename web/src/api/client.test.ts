import { afterEach, describe, expect, it, vi } from 'vitest'
import { client } from './client'
import { Problem } from './problem'

afterEach(() => vi.unstubAllGlobals())

function answers(status: number, body: unknown): ReturnType<typeof vi.fn> {
  const fetch = vi.fn(async () => new Response(body === undefined ? null : typeof body === 'string' ? body : JSON.stringify(body), { status }))
  vi.stubGlobal('fetch', fetch)
  return fetch
}

describe('asking the program', () => {
  it('sends the version that a correction was made on', async () => {
    const fetch = answers(200, {})
    await client.correct('thickness', 'a/b', { thickness: '9 mm' }, 3)
    expect(fetch).toHaveBeenCalledWith('/api/v1/records/thickness/a%2Fb', {
      method: 'PUT',
      body: '{"thickness":"9 mm"}',
      headers: { Accept: 'application/json', 'Content-Type': 'application/json', 'If-Match': '"3"' },
    })
  })
  it('takes a list bare or as a part of a page', async () => {
    answers(200, [{ id: 'tide.window' }])
    expect(await client.methods()).toHaveLength(1)
    answers(200, { records: [{ id: '1' }, { id: '2' }], next: 'x' })
    expect(await client.records('thickness')).toHaveLength(2)
    answers(200, {})
    expect(await client.journal()).toEqual([])
  })
  it('takes an empty answer', async () => {
    answers(204, undefined)
    expect(await client.undo()).toBeUndefined()
  })
})

describe('a refusal', () => {
  const refusal = async (status: number, body: unknown) => {
    answers(status, body)
    return client.work('tide.window', {}).then(
      () => undefined,
      (err: unknown) => err as Problem,
    )
  }
  it('names the fields at fault as the form knows them', async () => {
    const problem = await refusal(422, {
      detail: 'one input was refused',
      errors: [{ message: 'bore must be larger than shaft (24 in <= 24 in)', location: 'body.bore' }, { message: 'area is missing', location: 'body.zones[1].area' }],
    })
    expect(problem).toBeInstanceOf(Problem)
    expect(problem!.fields).toEqual({ bore: 'bore must be larger than shaft (24 in <= 24 in)', 'zones[1].area': 'area is missing' })
  })
  it('brings the version that stands', async () => {
    const problem = await refusal(412, { detail: 'changed since', theirs: { version: 4, body: {} } })
    expect(problem!.status).toBe(412)
    expect(problem!.theirs?.version).toBe(4)
  })
  it('is read even where it is no JSON', async () => {
    expect((await refusal(502, '<html>bad gateway'))!.message).toContain('bad gateway')
  })
})
