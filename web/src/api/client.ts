// What the pages ask of the program, one function a task.
import type {
  Body, Brief, Drawing, Entry, Intake, IntakeGuess, JournalLine, Kind, Landing, Method, MethodHead, ProblemBody, Sheet, ShipHead,
} from './contract'
import { Problem } from './problem'

const root = '/api/v1'

export const client = {
  ship: () => get<ShipHead>('/ship'),
  brief: (day?: string) => get<Brief>('/brief' + (day ? `?day=${encodeURIComponent(day)}` : '')),
  drawing: () => get<Drawing>('/drawing'),
  sheet: (id: string) => get<Sheet>(`/sheets/${encodeURIComponent(id)}`),

  methods: async () => listed<MethodHead>(await get('/methods'), 'methods'),
  method: (id: string) => get<Method>(`/methods/${encodeURIComponent(id)}`),
  work: (id: string, inputs: Body) => send<Sheet>('POST', `/methods/${encodeURIComponent(id)}`, inputs),

  kinds: async () => listed<Kind>(await get('/kinds'), 'kinds'),
  records: async (kind: string) => listed<Entry>(await get(`/records/${kind}`), 'records'),
  record: (kind: string, id: string) => get<Entry>(at(kind, id)),
  history: async (kind: string, id: string) => listed<Entry>(await get(at(kind, id) + '/history'), 'versions'),
  add: (kind: string, body: Body) => send<Entry>('POST', `/records/${kind}`, body),
  correct: (kind: string, id: string, body: Body, version: number) => send<Entry>('PUT', at(kind, id), body, version),
  strike: (kind: string, id: string, version: number) => send<void>('DELETE', at(kind, id), undefined, version),
  undo: () => send<void>('POST', '/undo'),
  journal: async () => listed<JournalLine>(await get('/journal'), 'entries'),

  intake: (file: File) => {
    const form = new FormData()
    form.append('file', file)
    return ask<Intake>('/intake', { method: 'POST', body: form })
  },
  correctIntake: (token: string, guess: IntakeGuess) => send<Intake>('PUT', `/intake/${token}`, guess),
  commitIntake: (token: string) => send<Landing>('POST', `/intake/${token}/commit`),
}

function at(kind: string, id: string): string {
  return `/records/${kind}/${encodeURIComponent(id)}`
}

function get<T>(path: string): Promise<T> {
  return ask<T>(path, {})
}

function send<T>(method: string, path: string, body?: unknown, version?: number): Promise<T> {
  const headers: Record<string, string> = {}
  if (body !== undefined) headers['Content-Type'] = 'application/json'
  if (version !== undefined) headers['If-Match'] = `"${version}"`
  return ask<T>(path, { method, headers, body: body === undefined ? null : JSON.stringify(body) })
}

async function ask<T>(path: string, init: RequestInit): Promise<T> {
  const answer = await fetch(root + path, { ...init, headers: { Accept: 'application/json', ...init.headers } })
  if (!answer.ok) throw new Problem(answer.status, await problemBody(answer))
  return (answer.status === 204 ? undefined : await answer.json()) as T
}

async function problemBody(answer: Response): Promise<ProblemBody> {
  const text = await answer.text()
  try {
    return JSON.parse(text) as ProblemBody
  } catch {
    return { title: text.slice(0, 200) }
  }
}

/** A list, whether it comes bare or as one part of a page of results. */
function listed<T>(answer: T[] | Record<string, T[]>, part: string): T[] {
  if (Array.isArray(answer)) return answer
  return answer[part] ?? answer['items'] ?? []
}
