// What the phone keeps: the queue, the photographs, and what was last known of the ship. A write is acknowledged only when the phone has it.

export interface Queued {
  key: string
  kind: string
  id: string
  /** The version an edit was made on; 0 for a new record. */
  version: number
  body: Record<string, unknown>
  basis?: string
  made_at: string
  label: string
  /** SHA-256 of the files that must arrive first. */
  files: string[]
  refused?: string
}

export interface KeptFile {
  sha256: string
  name: string
  data: Blob
  sent: boolean
}

export interface Past {
  key: string
  label: string
  at: string
  beside: boolean
}

type Shelf = 'queue' | 'files' | 'past' | 'known'

let opened: Promise<IDBDatabase> | undefined

function open(): Promise<IDBDatabase> {
  opened ??= new Promise((found, failed) => {
    const asked = indexedDB.open('oakum-dock', 1)
    asked.onupgradeneeded = () => {
      asked.result.createObjectStore('queue', { keyPath: 'key' })
      asked.result.createObjectStore('files', { keyPath: 'sha256' })
      asked.result.createObjectStore('past', { keyPath: 'key' })
      asked.result.createObjectStore('known')
    }
    asked.onsuccess = () => found(asked.result)
    asked.onerror = () => failed(asked.error)
  })
  return opened
}

/** Runs one transaction and returns once it is on the phone for good. */
async function within<T>(shelves: Shelf[], mode: IDBTransactionMode, work: (of: (s: Shelf) => IDBObjectStore) => IDBRequest<T> | undefined): Promise<T | undefined> {
  const db = await open()
  return new Promise((found, failed) => {
    const t = db.transaction(shelves, mode, { durability: 'strict' })
    const asked = work((s) => t.objectStore(s))
    t.oncomplete = () => found(asked?.result)
    t.onabort = () => failed(t.error)
    t.onerror = () => failed(t.error)
  })
}

export const store = {
  /** Puts entries and the files they need into the queue, in the place of one that was mended; all or none. */
  put: (entries: Queued[], files: KeptFile[] = [], instead?: string) =>
    within(['queue', 'files'], 'readwrite', (of) => {
      for (const f of files) of('files').put(f)
      if (instead) of('queue').delete(instead)
      for (const q of entries) of('queue').put(q)
      return undefined
    }),
  queue: async () => ((await within<Queued[]>(['queue'], 'readonly', (of) => of('queue').getAll())) ?? []).sort((a, b) => a.key.localeCompare(b.key)),
  drop: (key: string) => within(['queue'], 'readwrite', (of) => void of('queue').delete(key) as undefined),
  /** Moves an entry from the queue to what was handed over. */
  done: (past: Past) =>
    within(['queue', 'past'], 'readwrite', (of) => {
      of('queue').delete(past.key)
      of('past').put(past)
      return undefined
    }),
  past: async () => ((await within<Past[]>(['past'], 'readonly', (of) => of('past').getAll())) ?? []).sort((a, b) => b.at.localeCompare(a.at)),
  file: (sha256: string) => within<KeptFile | undefined>(['files'], 'readonly', (of) => of('files').get(sha256)),
  /** A photograph that has arrived need not fill the phone. */
  arrived: (f: KeptFile) => within(['files'], 'readwrite', (of) => void of('files').put({ ...f, data: new Blob(), sent: true }) as undefined),
  learn: (what: string, value: unknown) => within(['known'], 'readwrite', (of) => void of('known').put(value, what) as undefined),
  known: <T>(what: string) => within<T | undefined>(['known'], 'readonly', (of) => of('known').get(what) as IDBRequest<T | undefined>),
}

let last = 0
/** Keys in the order they were made, whatever the clock does meanwhile. */
export function newKey(): string {
  const stored = Number(localStorage.getItem('oakum dock count') ?? 0)
  last = Math.max(last, stored) + 1
  localStorage.setItem('oakum dock count', String(last))
  return `${device()}-${String(last).padStart(8, '0')}`
}

/** The phone's own name, made once. */
export function device(): string {
  let name = localStorage.getItem('oakum dock phone')
  if (!name) {
    name = `phone-${crypto.randomUUID().slice(0, 8)}`
    localStorage.setItem('oakum dock phone', name)
  }
  return name
}
