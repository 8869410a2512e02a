// An update while somebody edits it: from a draft of the day, or from the record that is kept.
import { client } from '../api/client'
import type { Body, DraftRow, Entry } from '../api/contract'

export interface Editing {
  /** The record it stands in; none for a new one. */
  id?: string
  version?: number
  kept: Body
  /** How it stood when it was opened: draft, published or withdrawn. */
  state: string
  title: string
  date: string
  audience: string
  text: string
  photos: string[]
  why: string
  snapshot: string
}

export function ofDraft(d: DraftRow, day: string): Editing {
  const first = d.photos[0]
  return { kept: { rhythm: d.rhythm }, state: 'draft', title: d.title, date: day, audience: d.audience, text: d.text, photos: first ? [first.id] : [], why: '', snapshot: d.snapshot }
}

export function ofRecord(e: Entry): Editing {
  const b = e.body
  const text = (key: string) => (typeof b[key] === 'string' ? (b[key] as string) : '')
  return {
    id: e.id, version: e.version, kept: b, state: text('state') || 'draft', title: text('title'), date: text('date'), audience: text('audience') || 'public', text: text('text'),
    photos: Array.isArray(b.photos) ? (b.photos as string[]) : [], why: '', snapshot: text('snapshot'),
  }
}

/** What is sent: the whole record, with the mark that lets its readers see it once it is published. */
export function sent(e: Editing, state: string): { mark: 'public' | 'board'; basis: 'documented'; body: Body } {
  const mark = state === 'draft' || e.audience === 'board' ? 'board' : 'public'
  const body: Body = { ...e.kept, title: e.title, audience: e.audience, text: e.text, photos: e.photos, state }
  for (const [key, value] of [['date', e.date], ['snapshot', e.snapshot], ['correction', e.why || e.kept.correction]] as const) {
    if (value) body[key] = value
    else delete body[key]
  }
  return { mark, basis: 'documented', body }
}

export function keep(e: Editing, state: string): Promise<Entry> {
  const what = sent(e, state)
  return e.id === undefined ? client.enter('update', what) : client.correct('update', e.id, what, e.version ?? 0)
}
