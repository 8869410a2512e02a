import type { Order } from '../parts/sort'
import { plain } from '../sheet/value'
import { isFigure } from './parts'

export type Row = Record<string, unknown>

/** What tells a row apart but is not read: which record it is about. */
const hidden = ['id', 'kind']

/** The columns of rows of one shape: what at least one row says, but no lists of things and no things within things. */
export function columnsOf(rows: readonly Row[]): string[] {
  const keys = [...new Set(rows.flatMap((row) => Object.keys(row)))]
  const said = keys.filter((key) => rows.some((row) => textOf(row[key]) !== ''))
  return said.filter((key) => !hidden.includes(key) && rows.every((row) => simple(row[key])))
}

function simple(value: unknown): boolean {
  if (Array.isArray(value)) return value.every((one) => typeof one !== 'object')
  return typeof value !== 'object' || value === null || isFigure(value)
}

export function textOf(value: unknown): string {
  if (isFigure(value)) return value.text
  if (value === null || value === undefined || (Array.isArray(value) && value.length === 0)) return ''
  return value === '' ? '' : plain(value)
}

export function orderOf(value: unknown): Order {
  if (isFigure(value)) return value.p50 ?? value.value
  return typeof value === 'number' ? value : textOf(value)
}
