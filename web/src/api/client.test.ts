import { afterEach, describe, expect, it, vi } from 'vitest'
import { client } from './client'
import { Problem } from './problem'
import { writer } from './writer'

afterEach(() => vi.unstubAllGlobals())

function answers(status: number, body: unknown): { asked: () => Request } {
  const fetch = vi.fn(async (_: Request) => new Response(typeof body === 'string' ? body : JSON.stringify(body), { status }))
  vi.stubGlobal('fetch', fetch)
  return { asked: () => fetch.mock.calls[0]![0] }
}

describe('asking the program', () => {
  it('sends the version that a correction was made on, and whose hand it is', async () => {
    writer.name = 'Zoë Łuk'
    const { asked } = answers(200, {})
    await client.correct('thickness', 'a/b', { body: { thickness: '9 mm' } }, 3)
    const { method, url, headers } = asked()
    expect([method, new URL(url).pathname]).toEqual(['PUT', '/api/v1/records/thickness/a%2Fb'])
    expect(headers.get('If-Match')).toBe('"3"')
    expect(headers.get('Oakum-By')).toBe('Zo%C3%AB%20%C5%81uk')
    expect(await asked().json()).toEqual({ body: { thickness: '9 mm' } })
  })
  it('asks for the day that is looked at', async () => {
    const { asked } = answers(200, {})
    await client.sheet('plating.rate@C 37½', '2026-05-01')
    expect(asked().url).toContain('/api/v1/sheets/plating.rate%40C%2037%C2%BD?day=2026-05-01')
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
