// The courses of one matter as columns, and everything that is known of them as rows: facts, scores, weights, voices.
import type { Brief, Figure, MatterRow } from '../api/contract'
import type { SideColumn, SideGroup, SideRow } from '../parts/sides'
import { to } from '../shell/brief.svelte'
import { text } from '../text'

type Page = Brief['choices']
type Course = Page['courses'][number]

const figures = ['cost', 'yearly', 'days', 'mass_off', 'sinkage', 'trim_change', 'heel', 'gm', 'bronze_off', 'risk_left', 'holds'] as const
/** Of courses that say what becomes of propellers and tail lengths. */
const heavy = ['part_mass', 'lift', 'shackle', 'stand', 'road', 'current', 'bearing', 'plate', 'bolts'] as const
const worded = ['gate', 'custody', 'heritage', 'protection', 'risk', 'needs', 'rules_out', 'notes'] as const

export function coursesOf(page: Page, matter: MatterRow): Course[] {
  return page.courses.filter((c) => c.matter_id === matter.id)
}

export function columnsOf(courses: readonly Course[]): SideColumn[] {
  return courses.map((c) => ({
    key: c.id,
    name: c.name,
    href: to('records', 'course', c.id),
    marks: [c.taken ? text.choices.taken : '', c.leaves ? text.choices.leaves : ''].filter(Boolean),
    strong: c.taken,
  }))
}

export function groupsOf(page: Page, matter: MatterRow, courses: readonly Course[]): SideGroup[] {
  const names = text.choices.groups
  return [
    { name: names.does, rows: facts(courses) },
    { name: names.scores, rows: scores(page, matter, courses) },
    { name: names.weights, rows: weights(page, matter, courses) },
    { name: names.voices, rows: voices(page, matter, courses) },
  ]
}

function facts(courses: readonly Course[]): SideRow[] {
  const first = courses[0]
  if (!first) return []
  return [
    ...figures.map((key) => ({ label: first[key].label, cells: courses.map((c) => c[key]) })),
    ...heavy.flatMap((key) => {
      const label = courses.find((c) => c[key])?.[key]?.label
      return label ? [{ label, cells: courses.map((c) => c[key] ?? text.choices.notWorked) }] : []
    }),
    ...worded.map((key) => ({ label: text.choices.words[key], cells: courses.map((c) => c[key]) })),
  ]
}

function scores(page: Page, matter: MatterRow, courses: readonly Course[]): SideRow[] {
  const own = page.scores.filter((s) => s.matter === matter.name)
  const criteria = [...new Map(own.map((s) => [s.criterion, s])).values()]
  return criteria.map((k) => ({
    label: text.choices.criterion(k.criterion, k.measured_in, k.worst_to_best),
    cells: courses.map((c) => own.find((s) => s.course === c.name && s.criterion === k.criterion)?.score ?? ''),
  }))
}

function weights(page: Page, matter: MatterRow, courses: readonly Course[]): SideRow[] {
  const own = courses.map((c) => page.weighed.find((w) => w.matter === matter.name && w.course === c.name))
  const known = own.find((w) => w !== undefined)
  if (!known) return []
  return [
    { label: text.choices.rank, cells: own.map((w) => (w ? String(w.rank) : '')) },
    { label: known.value.label, cells: own.map((w) => w?.value ?? '') },
    { label: known.first_in.label, cells: own.map((w) => w?.first_in ?? '') },
    { label: known.first_in_voices.label, cells: own.map((w) => w?.first_in_voices ?? '') },
    { label: text.choices.dominated, cells: own.map((w) => (w ? text.form[w.dominated ? 'yes' : 'no'] : '')) },
  ]
}

function voices(page: Page, matter: MatterRow, courses: readonly Course[]): SideRow[] {
  const own = page.voice_values.filter((v) => v.matter === matter.name)
  const names = [...new Set(own.map((v) => v.voice))]
  const n = (f: { value: number | null }) => f.value ?? 0
  const polls = courses.map((c) => page.polls.find((p) => p.matter === matter.name && p.course === c.name))
  return [
    ...names.map((voice) => ({
      label: voice,
      cells: courses.map((c): Figure | string => {
        const v = own.find((x) => x.voice === voice && x.course === c.name)
        return v ? { ...v.value, note: v.says } : ''
      }),
    })),
    ...(polls.some(Boolean) ? [{ label: text.choices.polled, cells: polls.map((p) => (p ? text.choices.poll(n(p.prefer), n(p.live_by) - n(p.prefer), n(p.refuse), n(p.heard)) : '')) }] : []),
  ]
}
