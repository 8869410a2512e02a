// What stands in a form while it is filled in: text as typed, in the shape of the fields. The program reads it; the pages never convert.
import type { Body, Field } from '../api/contract'
import { text } from '../text'

export interface Spread {
  low: string
  likely: string
  high: string
}
export type Draft = { [key: string]: Entry }
export type Entry = string | Spread | Draft | Draft[]

/** An empty form, one row in each table that must have rows. */
export function blank(fields: readonly Field[]): Draft {
  return Object.fromEntries(fields.map((f) => [f.key, empty(f)]))
}

function empty(f: Field): Entry {
  if (f.type === 'table') return f.required ? [blank(f.fields ?? [])] : []
  if (f.type === 'group') return blank(f.fields ?? [])
  return ''
}

/** The form of values that are already there: as they were typed where that is kept, by path, or else as numbers in the declared unit. */
export function filled(fields: readonly Field[], body: Body, typed: Record<string, string> = {}, path = ''): Draft {
  return Object.fromEntries(fields.map((f) => [f.key, entry(f, body[f.key], typed, path ? `${path}.${f.key}` : f.key)]))
}

function entry(f: Field, value: unknown, typed: Record<string, string>, at: string): Entry {
  if (value === undefined || value === null) return empty(f)
  const list = Array.isArray(value) ? (value as unknown[]) : undefined
  switch (f.type) {
    case 'table':
      return (list ?? []).map((row, i) => filled(f.fields ?? [], row as Body, typed, `${at}[${i}]`))
    case 'group':
      return filled(f.fields ?? [], value as Body, typed, at)
    case 'grid':
      return (list ?? []).map((row) => [row].flat().join(' ')).join('\n')
    case 'list':
      return (list ?? [value]).map((one, i) => typed[`${at}[${i}]`] ?? String(one)).join('\n')
    case 'boolean':
      return value ? 'yes' : 'no'
  }
  if (typed[at]) return typed[at]
  return typeof value === 'object' ? (f.type === 'hull' ? JSON.stringify(value) : quantity(value as Body)) : String(value)
}

/** A value with its unit, or its spread. */
function quantity(value: Body): Entry {
  const after = value.unit ? ` ${String(value.unit)}` : ''
  if (value.low !== undefined && value.high !== undefined) {
    return { low: String(value.low), likely: String(value.likely ?? value.value ?? ''), high: String(value.high) }
  }
  return value.value === undefined || value.value === null ? '' : `${String(value.value)}${after}`
}

export function isSpread(e: Entry | undefined): e is Spread {
  return typeof e === 'object' && !Array.isArray(e) && 'likely' in e && 'low' in e && 'high' in e
}

/** What is sent: entries left empty are left out, so that the program knows them as not given. */
export function values(fields: readonly Field[], draft: Draft): Body {
  const body: Body = {}
  for (const f of fields) {
    const value = valueOf(f, draft[f.key])
    if (value !== undefined) body[f.key] = value
  }
  return body
}

function valueOf(f: Field, e: Entry | undefined): unknown {
  if (Array.isArray(e)) {
    const rows = e.map((row) => values(f.fields ?? [], row)).filter((row) => Object.keys(row).length > 0)
    return rows.length ? rows : undefined
  }
  if (isSpread(e)) return spread(f, e)
  if (typeof e === 'object') {
    const group = values(f.fields ?? [], e)
    return Object.keys(group).length ? group : undefined
  }
  const typed = e?.trim() ?? ''
  if (typed === '') return undefined
  if (f.type === 'list') return typed.split(/[;\n]+/).map((one) => one.trim()).filter(Boolean)
  if (f.type === 'grid') return typed.split('\n').map((row) => row.trim().split(/\s+/))
  if (f.type === 'hull') return json(typed)
  return typed
}

function spread(f: Field, { low, likely, high }: Spread): unknown {
  if (![low, likely, high].some((x) => x.trim())) return undefined
  return { low: low.trim(), ...(likely.trim() ? { likely: likely.trim() } : {}), high: high.trim(), ...(f.unit ? { unit: f.unit } : {}) }
}

/** A hull is pasted as JSON; what is not JSON is sent as it stands, and the program says what is wrong with it. */
function json(typed: string): unknown {
  try {
    return JSON.parse(typed)
  } catch {
    return typed
  }
}

/** What is missing before anything is sent, by path. The program checks all the rest. */
export function missing(fields: readonly Field[], draft: Draft, path = ''): Record<string, string> {
  const wrong: Record<string, string> = {}
  for (const f of fields) {
    const at = path ? `${path}.${f.key}` : f.key
    const e = draft[f.key]
    if (f.required && f.default === undefined && valueOf(f, e) === undefined) wrong[at] = text.form.missing(f.label)
    else if (Array.isArray(e)) e.forEach((row, i) => started(f, row) && Object.assign(wrong, missing(f.fields ?? [], row, `${at}[${i}]`)))
    else if (f.type === 'group' && typeof e === 'object' && !isSpread(e) && (f.required || started(f, e))) {
      Object.assign(wrong, missing(f.fields ?? [], e, at))
    }
  }
  return wrong
}

function started(f: Field, row: Draft): boolean {
  return Object.keys(values(f.fields ?? [], row)).length > 0
}

/** The rows of a block copied from a spreadsheet, filled in from a column of a table onward; nothing where it is one cell only. */
export function pasted(fields: readonly Field[], from: string, block: string): Draft[] | undefined {
  const rows = block.replace(/\r?\n$/, '').split(/\r?\n/).map((row) => row.split('\t'))
  if (rows.length === 1 && rows[0]!.length === 1) return undefined
  const first = Math.max(0, fields.findIndex((f) => f.key === from))
  return rows.map((cells) => {
    const row = blank(fields)
    cells.forEach((cell, i) => {
      const f = fields[first + i]
      if (f) row[f.key] = cell.trim()
    })
    return row
  })
}

/** The paths at fault that a field or anything below it answers for. */
export function below(errors: Record<string, string>, path: string): boolean {
  return Object.keys(errors).some((at) => at === path || at.startsWith(`${path}.`) || at.startsWith(`${path}[`))
}

/** The limits of a field in words: "more than 0, at most 10 m". */
export function bounds(f: Field): string {
  const parts = (['over', 'min', 'under', 'max'] as const).filter((b) => f[b] !== undefined).map((b) => `${text.form.bounds[b]} ${f[b]}`)
  return parts.join(', ')
}
