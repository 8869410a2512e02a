import type { SheetLine } from '../api/contract'
import type { Axis, Series } from '../parts/series'
import { unitText } from '../quantity/unit'
import { text, words } from '../text'

/** One line of a sheet as it is read: its own text, or its value in words. Tables are shown as tables and say nothing here. */
export function read(line: SheetLine): string {
  if (line.text) return line.text
  return plain(line.value, line.unit)
}

export function plain(value: unknown, unit = ''): string {
  const after = unitText(unit) ? ` ${unitText(unit)}` : ''
  if (value === null || value === undefined || value === '') return text.figure.unknown
  if (typeof value === 'boolean') return value ? text.form.yes : text.form.no
  if (Array.isArray(value)) return value.map((one) => plain(one)).join('; ') + after
  if (typeof value === 'object') return Object.entries(value).map(([key, one]) => `${words(key)}: ${plain(one)}`).join('; ')
  return (typeof value === 'number' ? String(Number(value.toPrecision(12))) : String(value)) + after
}

/** The rows of a line that is a table: a list of records. */
export function rows(line: SheetLine): Record<string, unknown>[] | undefined {
  const { value } = line
  if (!Array.isArray(value) || value.length === 0) return undefined
  return value.every((row) => row !== null && typeof row === 'object' && !Array.isArray(row)) ? value : undefined
}

/** A table as lines of a chart: where its first column rises and the others are numbers of one unit. */
export function chart(line: SheetLine): { x: Axis; y: Axis; series: Series[] } | undefined {
  const all = rows(line)
  const [first, ...rest] = line.fields ?? []
  if (!all || !first || rest.length === 0 || all.length < 6) return undefined
  const number = (row: Record<string, unknown>, key: string) => (typeof row[key] === 'number' ? row[key] : NaN)
  const rises = all.every((row, i) => i === 0 || number(row, first.key) > number(all[i - 1]!, first.key))
  const alike = rest.every((f) => f.unit === rest[0]!.unit && all.every((row) => Number.isFinite(number(row, f.key))))
  if (!rises || !alike) return undefined
  const series = rest.map((f) => ({ label: f.label, points: all.map((row) => ({ x: number(row, first.key), y: number(row, f.key) })) }))
  return { x: axis(first), y: axis(rest.length === 1 ? rest[0]! : { label: line.label, unit: rest[0]!.unit }), series }
}

function axis({ label, unit }: { label: string; unit?: string | undefined }): Axis {
  return unit ? { label: words(label), unit } : { label: words(label) }
}

/** The whole sheet as rows for a spreadsheet. */
export function asRows(sheet: { inputs: SheetLine[]; results: SheetLine[] }): unknown[][] {
  const of = (part: string, lines: SheetLine[]) =>
    lines.map((l) => [part, l.key, l.symbol ?? '', l.label, l.value, l.unit, l.p10, l.p50, l.p90, l.basis ?? '', l.basis_note ?? ''])
  return [
    ['part', 'key', 'symbol', 'label', 'value', 'unit', 'p10', 'p50', 'p90', 'basis', 'basis note'],
    ...of('input', sheet.inputs),
    ...of('result', sheet.results),
  ]
}
