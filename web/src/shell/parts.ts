// What the parts of a page are, told from their shape: a page shows each in the way its shape asks for.
import type { Figure, Notice } from '../api/contract'

export type Part =
  | { as: 'figure'; key: string; figure: Figure }
  | { as: 'figures'; key: string; figures: Figure[] }
  | { as: 'notices'; key: string; notices: Notice[] }
  | { as: 'rows'; key: string; rows: Record<string, unknown>[] }
  | { as: 'sentences'; key: string; sentences: string[] }
  | { as: 'group'; key: string; parts: Part[] }

export function isFigure(x: unknown): x is Figure {
  return isRecord(x) && 'label' in x && 'text' in x && 'basis' in x
}

export function isNotice(x: unknown): x is Notice {
  return isRecord(x) && typeof x.what === 'string' && !('basis' in x)
}

function isRecord(x: unknown): x is Record<string, unknown> {
  return typeof x === 'object' && x !== null && !Array.isArray(x)
}

/** The parts of a page in their order; what is empty is left out, and so are the keys that the page draws itself. */
export function parts(page: object, drawn: readonly string[] = []): Part[] {
  return Object.entries(page)
    .filter(([key]) => !drawn.includes(key))
    .map(([key, value]) => part(key, value))
    .filter((p) => p !== undefined)
}

function part(key: string, value: unknown): Part | undefined {
  if (isFigure(value)) return { as: 'figure', key, figure: value }
  if (typeof value === 'string' && value) return { as: 'sentences', key, sentences: [value] }
  if (Array.isArray(value)) return list(key, value)
  if (!isRecord(value)) return undefined
  const inner = parts(value)
  return inner.length ? { as: 'group', key, parts: inner } : undefined
}

function list(key: string, values: unknown[]): Part | undefined {
  if (values.length === 0) return undefined
  if (values.every(isFigure)) return { as: 'figures', key, figures: values }
  if (values.every(isNotice)) return { as: 'notices', key, notices: values }
  if (values.every(isRecord)) return { as: 'rows', key, rows: values }
  return { as: 'sentences', key, sentences: values.map(String) }
}
