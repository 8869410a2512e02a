// The queue as a file. Where a phone can't reach the laptop any more (another address, a lost network, a broken aerial), what it holds is carried by
// hand: saved as a file, brought over by cable or card, and taken over by any dock sheet that reaches the laptop. Keys go along, so that nothing lands twice.
import { fingerprint } from './photo'
import { store, type KeptFile, type Queued } from './store'
import { say } from './words'

interface Carried {
  oakum_queue: 1
  entries: Queued[]
  files: { sha256: string; name: string; type: string; data: string }[]
}

export async function packed(): Promise<Blob> {
  const entries = await store.queue()
  const files: Carried['files'] = []
  for (const sha256 of new Set(entries.flatMap((q) => q.files))) {
    const f = await store.file(sha256)
    if (f && !f.sent) files.push({ sha256, name: f.name, type: f.data.type, data: await base64(f.data) })
  }
  const out: Carried = { oakum_queue: 1, entries, files }
  return new Blob([JSON.stringify(out)], { type: 'application/json' })
}

/** Takes a carried queue into this one and says how many entries it held. A file that is none, or that broke on the way, is refused whole. */
export async function unpacked(file: File): Promise<number> {
  const held = read(await file.text())
  if (!held) throw new Error(say.carryNone(file.name))
  const files: KeptFile[] = []
  for (const f of held.files) {
    const data = new Blob([Uint8Array.from(atob(f.data), (c) => c.charCodeAt(0))], { type: f.type })
    if ((await fingerprint(data)) !== f.sha256) throw new Error(say.carryBroken(f.name))
    files.push({ sha256: f.sha256, name: f.name, data, sent: false })
  }
  await store.put(held.entries.map((q) => ({ ...q, refused: undefined })), files)
  return held.entries.length
}

function read(text: string): Carried | undefined {
  try {
    const held = JSON.parse(text) as Carried
    return held.oakum_queue === 1 && Array.isArray(held.files) && Array.isArray(held.entries) && held.entries.every((q) => q.key && q.kind && q.id && q.body) ? held : undefined
  } catch {
    return undefined
  }
}

async function base64(data: Blob): Promise<string> {
  const bytes = new Uint8Array(await data.arrayBuffer())
  let out = ''
  for (let i = 0; i < bytes.length; i += 0x8000) out += String.fromCharCode(...bytes.subarray(i, i + 0x8000))
  return btoa(out)
}
