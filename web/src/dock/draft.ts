// From what was tapped to a record. A draft is kept at every tap, so that a call or an empty battery loses nothing.
import { asked, type Ask, type SheetDef } from './sheets'
import { say } from './words'

export type Draft = Record<string, string>

export function readDraft(name: string): Draft {
  try {
    return JSON.parse(localStorage.getItem(`oakum dock draft ${name}`) ?? '{}') as Draft
  } catch {
    return {}
  }
}

export function keepDraft(name: string, draft: Draft): void {
  localStorage.setItem(`oakum dock draft ${name}`, JSON.stringify(draft))
}

export function dropDraft(name: string): void {
  localStorage.removeItem(`oakum dock draft ${name}`)
}

/** A number as a person writes it, with either decimal sign. */
export function numberOf(text: string): number | undefined {
  const plain = text.trim().replace(',', '.').replace('−', '-')
  return /^-?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : undefined
}

/** What is wrong with a draft; empty where nothing is. */
export function faults(sheet: SheetDef, draft: Draft, photo: boolean): string[] {
  return asked(sheet, draft).flatMap((ask) => fault(ask, draft, photo))
}

function fault(ask: Ask, draft: Draft, photo: boolean): string[] {
  if (ask.as === 'photo') return ask.needed && !photo ? [say.needPhoto] : []
  if (ask.as === 'place') return []
  const text = (draft[ask.key] ?? '').trim()
  if (!text) return 'needed' in ask && ask.needed ? [say.required(ask.label)] : []
  if (ask.as === 'number') {
    const x = numberOf(text)
    if (x === undefined || (ask.whole && !Number.isInteger(x))) return [say.number(ask.label)]
    return x < ask.low || x > ask.high ? [say.between(ask.label, ask.low, ask.high)] : []
  }
  if (ask.as === 'numbers' && parts(text).some((p) => numberOf(p) === undefined)) return [say.number(ask.label)]
  return []
}

function parts(text: string): string[] {
  return text.split(/[\s;]+/).filter(Boolean)
}

const placed = ['frame', 'frame_to', 'strake', 'side', 'space'] as const

/** The body of the record that a draft makes. */
export function bodyOf(sheet: SheetDef, draft: Draft): Record<string, unknown> {
  const body: Record<string, unknown> = { ...sheet.fixed }
  for (const ask of asked(sheet, draft)) {
    if (ask.as === 'photo') continue
    if (ask.as === 'place') Object.assign(body, Object.fromEntries(placed.filter((k) => draft[k]?.trim()).map((k) => [k, draft[k]!.trim()])))
    else {
      const text = (draft[ask.key] ?? '').trim()
      if (text) body[ask.key] = value(ask, text)
    }
  }
  return body
}

function value(ask: Ask, text: string): unknown {
  if (ask.as === 'number') return ask.hundredths ? numberOf(text)! / 100 : numberOf(text)
  if (ask.as === 'numbers') return parts(text).map(numberOf)
  return ask.as === 'flag' ? text === 'yes' : text
}

/** The draft that would make a body: an entry that still waits is opened again. */
export function draftOf(sheet: SheetDef, body: Record<string, unknown>): Draft {
  const draft: Draft = {}
  const parts = new Set(sheet.asks.flatMap((ask) => (ask.as === 'number' && ask.hundredths ? [ask.key] : [])))
  for (const key of keysOf(sheet)) {
    const v = parts.has(key) && typeof body[key] === 'number' ? Number((body[key] * 100).toPrecision(12)) : body[key]
    if (v === undefined || v === null) continue
    draft[key] = typeof v === 'boolean' ? (v ? 'yes' : 'no') : Array.isArray(v) ? v.join(' ') : String(v)
  }
  return draft
}

/** A body without what its sheet asks, so that what was taken out of the sheet is taken out of the record. */
export function without(sheet: SheetDef, body: Record<string, unknown>): Record<string, unknown> {
  const asked = new Set<string>(keysOf(sheet))
  return Object.fromEntries(Object.entries(body).filter(([key]) => !asked.has(key)))
}

function keysOf(sheet: SheetDef): string[] {
  return sheet.asks.flatMap((ask) => (ask.as === 'place' ? [...placed] : ask.as === 'photo' ? [] : [ask.key]))
}

/** The place alone, for a photograph that belongs to another record. */
export function placeOf(draft: Draft): Record<string, string> {
  return Object.fromEntries(placed.filter((k) => draft[k]?.trim()).map((k) => [k, draft[k]!.trim()]))
}

/** What the queue calls an entry. */
export function labelOf(sheet: SheetDef, draft: Draft): string {
  const where = [draft.frame && `${say.frame.toLowerCase()} ${draft.frame}`, draft.strake && `${say.strake.toLowerCase()} ${draft.strake}`, draft.side].filter(Boolean).join(', ')
  return [sheet.title, draft.finding, draft.title, where].filter(Boolean).join(': ')
}

/** The day and the hour by a clock, in this phone's own zone. */
export function dayOf(at: Date): string {
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`
}

export function hourOf(at: Date): string {
  return `${two(at.getHours())}:${two(at.getMinutes())}`
}

function two(n: number): string {
  return String(n).padStart(2, '0')
}
