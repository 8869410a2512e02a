// Handing the queue over: entries without photographs first, so that no heavy picture holds back a reading; then each photograph with the entry that needs
// it. Whatever breaks off on the way stays in the queue and goes again.
import type { components } from '../api/types'
import { device, store, type KeptFile, type Queued } from './store'

export type Known = components['schemas']['DockAnswer'] & { asked: string }
type Merged = components['schemas']['AppMerged']

/** How the last try went: all handed over, no network, the code is not valid any more, or the laptop is in trouble and says so. */
export type Went = 'done' | 'offline' | 'closed' | 'trouble'

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

export async function handOver(who: string): Promise<{ went: Went; why: string }> {
  try {
    const waits = (await store.queue()).filter((q) => !q.refused)
    const light = waits.filter((q) => !q.files.length)
    for (let i = 0; i < light.length; i += most) await lot(who, light.slice(i, i + most))
    for (const q of waits.filter((w) => w.files.length)) if (await filesArrive(q)) await lot(who, [q])
    return { went: 'done', why: '' }
  } catch (err) {
    if (err instanceof Trouble) return { went: 'trouble', why: err.message }
    return { went: err instanceof Closed ? 'closed' : 'offline', why: '' }
  }
}

/** The code has run out, or the phone was turned out. */
class Closed extends Error {}

/** The laptop answers and can't take it: a full disk. Nothing is wrong with the entry. */
class Trouble extends Error {}

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

interface Refusal {
  detail?: string
  field?: string
}

/** Sends one photograph. What comes back is why it is not taken, for good; a photograph that broke on the way is no such thing, and goes again. */
async function fileArrives(f: KeptFile): Promise<string> {
  const answer = await ask(`/api/v1/photos?name=${encodeURIComponent(f.name)}&sha256=${f.sha256}`, {
    method: 'POST', body: f.data, headers: { 'Content-Type': 'application/octet-stream' },
  })
  if (answer.status === 422 || answer.status === 413) {
    const why = (await answer.json()) as Refusal
    if (why.field !== 'sha256') return why.detail || String(answer.status)
  }
  await good(answer)
  await store.arrived(f)
  return ''
}

async function good(answer: Response): Promise<void> {
  if (answer.ok) return
  if (answer.status === 401 || answer.status === 403) throw new Closed()
  if (answer.status === 503 || answer.status === 507) throw new Trouble(((await answer.json()) as Refusal).detail)
  throw new Error(`${answer.status}`)
}

async function lot(who: string, queue: Queued[]): Promise<void> {
  const items = queue.map(({ key, kind, id, version, body, basis, made_at }) => ({ key, kind, id, version, body, made_at, ...(basis ? { basis } : {}), ...(version ? {} : { mark: 'board' }) }))
  const answer = await ask('/api/v1/merge', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', 'Oakum-By': encodeURIComponent(who) },
    body: JSON.stringify({ device: device(), sent_at: new Date().toISOString(), items }),
  })
  await good(answer)
  const merged = (await answer.json()) as Merged
  for (const [i, o] of (merged.items ?? []).entries()) {
    const q = queue[i]
    if (!q || q.key !== o.key) continue
    if (o.state === 'refused') await store.put([{ ...q, refused: o.reason ?? '' }])
    else await store.done({ key: q.key, label: q.label, at: merged.now, beside: o.state === 'beside' })
  }
}
