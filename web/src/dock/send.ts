// Handing the queue over: photographs first, then the entries that have all of theirs. Whatever breaks off on the way stays in the queue and goes again.
import type { components } from '../api/types'
import { device, store, type KeptFile, type Queued } from './store'

export type Known = components['schemas']['DockAnswer'] & { asked: string }
type Merged = components['schemas']['AppMerged']

/** How the last try went: all handed over, no network, or the code is not valid any more. */
export type Went = 'done' | 'offline' | 'closed'

const most = 500 // entries in one lot
const patience = 20_000 // ms

async function ask(path: string, init: RequestInit = {}): Promise<Response> {
  return fetch(path, { credentials: 'same-origin', signal: AbortSignal.timeout(init.method ? 120_000 : patience), ...init })
}

/** Learns what is to be known of the ship, and the program's clock. */
export async function learn(): Promise<{ went: Went; known?: Known }> {
  try {
    const before = Date.now()
    const answer = await ask('/api/v1/dock', { cache: 'no-store' })
    if (answer.status === 401 || answer.status === 403) return { went: 'closed' }
    if (!answer.ok) return { went: 'offline' }
    const known = { ...((await answer.json()) as Known), asked: new Date((before + Date.now()) / 2).toISOString() }
    await store.learn('ship', known)
    return { went: 'done', known }
  } catch {
    return { went: 'offline' }
  }
}

export async function handOver(who: string): Promise<{ went: Went; clock: string }> {
  let clock = ''
  try {
    const ready: Queued[] = []
    for (const q of await store.queue()) if (!q.refused && (await filesArrive(q))) ready.push(q)
    for (let i = 0; i < ready.length; i += most) clock = (await lot(who, ready.slice(i, i + most))) || clock
    return { went: 'done', clock }
  } catch (err) {
    return { went: err instanceof Closed ? 'closed' : 'offline', clock }
  }
}

class Closed extends Error {}

async function filesArrive(q: Queued): Promise<boolean> {
  for (const sha256 of q.files) {
    const f = await store.file(sha256)
    if (!f || f.sent) continue
    const refused = await fileArrives(f)
    if (!refused) continue
    await store.put([{ ...q, refused }])
    return false
  }
  return true
}

async function fileArrives(f: KeptFile): Promise<string> {
  const answer = await ask(`/api/v1/photos?name=${encodeURIComponent(f.name)}&sha256=${f.sha256}`, {
    method: 'POST', body: f.data, headers: { 'Content-Type': 'application/octet-stream' },
  })
  if (answer.status === 401 || answer.status === 403) throw new Closed()
  if (answer.status === 422 || answer.status === 413) return ((await answer.json()) as { detail?: string }).detail ?? ''
  if (!answer.ok) throw new Error(`${answer.status}`)
  await store.arrived(f)
  return ''
}

async function lot(who: string, queue: Queued[]): Promise<string> {
  const items = queue.map(({ key, kind, id, version, body, basis, made_at }) => ({ key, kind, id, version, body, made_at, ...(basis ? { basis } : {}), mark: 'board' }))
  const answer = await ask('/api/v1/merge', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', 'Oakum-By': encodeURIComponent(who) },
    body: JSON.stringify({ device: device(), sent_at: new Date().toISOString(), items }),
  })
  if (answer.status === 401 || answer.status === 403) throw new Closed()
  if (!answer.ok) throw new Error(`${answer.status}`)
  const merged = (await answer.json()) as Merged
  for (const [i, o] of (merged.items ?? []).entries()) {
    const q = queue[i]
    if (!q || q.key !== o.key) continue
    if (o.state === 'refused') await store.put([{ ...q, refused: o.reason ?? '' }])
    else await store.done({ key: q.key, label: q.label, at: merged.now, beside: o.state === 'beside' })
  }
  return merged.clock
}
