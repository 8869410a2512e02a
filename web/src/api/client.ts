// What the pages ask of the program, one function a task. Addresses and shapes are checked against the program's description.
import createClient from 'openapi-fetch'
import type { Brief, Drawing, Entry, Intake, IntakeGuess, Kind, Landing, Method, MethodHead, Pairing, ProblemBody, Records, Sent, Sheet, ShellMap, ShipHead, Step, Story, TriggerTrial } from './contract'
import { Problem } from './problem'
import { writer } from './writer'
import type { components, paths } from './types'

type Schemas = components['schemas']
type Signatures = Schemas['Signatures']
type ToDecide = Schemas['ToDecide']
type ToSign = Schemas['ToSign']

const api = createClient<paths>({ querySerializer: { array: { style: 'form', explode: false } }, baseUrl: location.origin, fetch: (request) => fetch(request) })

// Every write carries the name of whoever writes, for the journal.
api.use({
  onRequest({ request }) {
    if (request.method !== 'GET' && writer.name) request.headers.set('Oakum-By', encodeURIComponent(writer.name))
    return request
  },
})

/** Where the dates stand as a file for a calendar program. */
export const calendarFile = (day?: string): string => `/api/v1/calendar.ics${day ? `?day=${day}` : ''}`

export const client = {
  ship: () => got<ShipHead>(api.GET('/api/v1/ship')),
  brief: (day?: string, units?: 'as-entered' | 'metric' | 'us') => got<Brief>(api.GET('/api/v1/brief', { params: { query: { ...asOf(day), ...(units && units !== 'as-entered' ? { units } : {}) } } })),
  drawing: (day?: string) => got<Drawing>(api.GET('/api/v1/drawing', { params: { query: asOf(day) } })),
  shell: (day?: string) => got<ShellMap>(api.GET('/api/v1/shell', { params: { query: asOf(day) } })),
  sheet: (id: string, day?: string) => got<Sheet>(api.GET('/api/v1/sheets/{id}', { params: { path: { id }, query: asOf(day) } })),

  signatures: (id: string, day?: string) =>
    got<Signatures>(api.GET('/api/v1/sheets/{id}/reviews', { params: { path: { id }, query: asOf(day) } })),
  sign: (id: string, said: ToSign, day?: string) =>
    got<Signatures>(api.POST('/api/v1/sheets/{id}/reviews', { params: { path: { id }, query: asOf(day) }, body: said })),


  story: (which: number, future: number, plans: string[], day?: string) =>
    got<Story>(api.GET('/api/v1/futures/story', { params: { query: { which, future, plans, ...asOf(day) } } })),
  tryTrigger: (sent: Sent, day?: string) => got<TriggerTrial>(api.POST('/api/v1/futures/trigger', { params: { query: asOf(day) }, body: sent })),

  methods: () => got<MethodHead[]>(api.GET('/api/v1/methods')),
  method: (id: string) => got<Method>(api.GET('/api/v1/methods/{id}', { params: { path: { id } } })),
  work: (id: string, inputs: object) => got<Sheet>(api.POST('/api/v1/methods/{id}', { params: { path: { id } }, body: inputs as never })),

  kinds: () => got<Kind[]>(api.GET('/api/v1/kinds')),
  records: (kind: string, after?: string) =>
    got<Records>(api.GET('/api/v1/records/{kind}', { params: { path: { kind }, query: after ? { after } : {} } })),
  record: (kind: string, id: string) => got<Entry>(api.GET('/api/v1/records/{kind}/{id}', { params: { path: { kind, id } } })),
  history: (kind: string, id: string) => got<Entry[]>(api.GET('/api/v1/records/{kind}/{id}/history', { params: { path: { kind, id } } })),
  enter: (kind: string, sent: Sent) => got<Entry>(api.POST('/api/v1/records/{kind}', { params: { path: { kind } }, body: sent })),
  correct: (kind: string, id: string, sent: Sent, version: number) =>
    got<Entry>(api.PUT('/api/v1/records/{kind}/{id}', { params: { path: { kind, id }, header: { 'If-Match': `"${version}"` } }, body: sent })),
  withdraw: (kind: string, id: string, version: number) =>
    got<Entry>(api.DELETE('/api/v1/records/{kind}/{id}', { params: { path: { kind, id }, header: { 'If-Match': `"${version}"` } } })),
  decide: (sent: ToDecide) => got<Entry>(api.POST('/api/v1/decisions', { body: sent })),
  settle: (id: string, take: 'standing' | 'edit' | 'both') => got<Entry>(api.POST('/api/v1/clashes/{id}', { params: { path: { id } }, body: { take } })),
  pairing: (renew: boolean) => got<Pairing>(renew ? api.POST('/api/v1/pairing') : api.GET('/api/v1/pairing')),
  turnOut: () => got<void>(api.DELETE('/api/v1/pairing')),
  undo: () => got<Step>(api.POST('/api/v1/undo')),
  journal: (before?: number) => got<Step[]>(api.GET('/api/v1/journal', { params: { query: before ? { before } : {} } })),

  papers: (day?: string) => got<Schemas['Paper'][]>(api.GET('/api/v1/papers', { params: { query: asOf(day) } })),
  preview: (text: string) => got<{ html: string; paste: string }>(api.POST('/api/v1/preview', { body: { text } })),

  intake: (file: File) => {
    const form = new FormData()
    form.append('file', file)
    return got<Intake>(api.POST('/api/v1/intake', { body: form as never, bodySerializer: (body: unknown) => body as FormData }))
  },
  correctIntake: (token: string, guess: IntakeGuess) => got<Intake>(api.PUT('/api/v1/intake/{token}', { params: { path: { token } }, body: guess })),
  commitIntake: (token: string, again: boolean) => got<Landing>(api.POST('/api/v1/intake/{token}/commit', { params: { path: { token }, query: { again } } })),
}

function asOf(day: string | undefined): { day?: string } {
  return day ? { day } : {}
}

/** The answer, or the refusal thrown. */
async function got<T>(asked: Promise<{ data?: unknown; error?: unknown; response: Response }>): Promise<T> {
  const { data, error, response } = await asked
  if (!response.ok) throw new Problem(response.status, typeof error === 'object' && error ? (error as ProblemBody) : { title: String(error ?? '').slice(0, 200) })
  return data as T
}
