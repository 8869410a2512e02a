// A made-up program for the tests of the pages: answers of the right shape for an invented ship. Tests only; nothing of it is built in.
import type { Brief, Drawing, Entry, Field, Figure, Kind, KindGroup, Mark, Method, PageBrief, Point, Sheet, ShipHead } from '../src/api/contract'

export const ship: ShipHead = { name: 'TSS Corran Vey', revision: 412, day: '2026-11-25', currency: 'EUR', empty: false, invented: true }

const figure = (key: string, label: string, text: string, more: Partial<Figure> = {}): Figure => ({
  key, label, value: null, unit: '', text, basis: 'computed', worry: 0, ...more,
})

const page = (heading: string, more: object = {}) => ({ heading: [heading], missing: [], ...more })

/** The parts of the pages that have a test of their own; the program's brief has more. */
type Heads = { [K in keyof Brief]: Brief[K] extends PageBrief ? PageBrief : Brief[K] }

const heads: Heads = {
  day: ship.day,
  snapshot: '9f3c1a',
  name: ship.name,
  front: {
    empty: false,
    sentence: 'Water can get in first at the port gland, most likely between 2028 and 2033; the pumps hold it while shore power holds.',
    worst: [
      figure('gland', 'Port stern gland', '12 to 31 l/min', { p10: 12, p50: 19, p90: 31, unit: 'l/min', worry: 3, place: 'Fr 12, port', sheet: 'gland.flow@port' }),
      figure('plate', 'Thinnest plate read', '6.1 mm', { value: 6.1, unit: 'mm', basis: 'measured', basis_note: '2023', worry: 2, place: 'Fr 37½, strake C, port', sheet: 'plating.rate@C37' }),
      figure('behind', 'Behind the doublers', '', { basis: 'unknown', note: 'not looked at since 1988', place: 'Fr 60 to 84, waterline' }),
    ],
    when: figure('when', 'First water likely', '2028 to 2033', { value: 2030, p10: 2028, p50: 2030, p90: 2033, worry: 2, sheet: 'outlook.first' }),
    money: figure('money', 'Can be signed today', '418 000 EUR', { value: 418000, unit: 'EUR', sheet: 'money.sign' }),
    decision: { what: 'Propellers and tail shafts: stay, or come off', due: '2027-03-01', who: 'trustees', kind: 'matter', id: 'm1', worry: 1 },
    overdue: [{ what: 'Temporary repair at frame 22', due: '2021-10-01', kind: 'repair', id: 'r1', place: 'Fr 22, strake D, starboard', worry: 2 }],
    missing: [{ what: 'Draft readings since May', do: 'read the marks at slack water', kind: 'draft', worry: 1 }],
  },
  ship: page('She is 92.0 m of riveted mild steel; of 214 values, 61 are measured, 88 documented and 65 assumed.'),
  standing: page('She is tight today. Three places ask for action and 38 % of her bottom was never looked at.', {
    worst: [
      figure('gland', 'Port stern gland', '12 to 31 l/min', { p10: 12, p50: 19, p90: 31, unit: 'l/min', worry: 3, place: 'Fr 12, port', sheet: 'gland.flow@port' }),
      figure('plate', 'Thinnest plate read', '6.1 mm', { value: 6.1, unit: 'mm', basis: 'measured', basis_note: '2023', worry: 2, place: 'Fr 37½, strake C, port' }),
    ],
    trend: figure('gain', 'Weight gained a year', '6 to 9 t', { p10: 6, p50: 7.4, p90: 9, unit: 't/y', worry: 1, sheet: 'afloat.trend' }),
  }),
  outlook: page('The port gland lets water in first, most likely between 2028 and 2033.'),
  choices: page('Eight matters are open; two must be settled before a dock is booked.'),
  money: page('418 000 EUR can be signed today; 1.6 to 3.4 million are needed.'),
  docking: page('Skellby takes her on a tide of 2.9 m or more; Orrin Haven is a tow of 74 nautical miles.'),
  calendar: page('She can leave for Skellby between 15 and 20 September 2027.'),
  indock: page('She is not in dock.'),
  record: page('The last update to the public was told on 2 November.'),
  sheets: ['gland.flow@port', 'plating.rate@C37', 'afloat.trend'],
}
export const brief = heads as Brief

const length = 92
const halfBeam = 6.7
const depth = 7.6
const range = (n: number) => Array.from({ length: n + 1 }, (_, i) => i / n)

/** Half breadth of a smooth made-up hull. */
function half(x: number, z: number): number {
  const t = x / length
  const entrance = Math.min(1, (1 - t) / 0.38) ** 0.75
  const run = Math.min(1, 0.12 + t / 0.33) ** 0.8
  return halfBeam * entrance * run * Math.min(1, Math.max(0, z / depth)) ** (0.22 + 1.4 * Math.abs(t - 0.5) ** 2)
}

const sheer = (x: number) => depth + 1.9 * ((x - 40) / 50) ** 2 * (x > 40 ? 0.9 : 0.5)

function girth(x: number, upTo: number): number {
  return range(20).reduce((sum, t, i, all) => {
    if (i === 0) return 0
    const before = all[i - 1]! * upTo
    return sum + Math.hypot(half(x, t * upTo) - half(x, before), t * upTo - before)
  }, 0)
}

export function drawing(): Drawing {
  const xs = range(40).map((t) => t * length)
  const deck = xs.map((x): Point => [x, sheer(x)])
  const names = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'J']
  const edge = (n: number): Point[] => xs.map((x) => [x, (girth(x, depth) * n) / names.length])
  return {
    particulars: { length, beam: 2 * halfBeam, depth, draft: 4.75, aft: -3.5, fore: 93.5 },
    gear: [
      { kind: 'outline', id: 'funnel', name: 'funnel', profile: [[[44, 10], [43, 18], [47, 18], [48, 10]]] },
      { kind: 'propeller', id: 'screw', name: 'screw', profile: [[[1, 0.5], [1.2, 2], [1, 3.5]]], plan: [[[1, 1], [1, 4]]], sections: [[[1, 2], [4, 2]], [[-4, 2], [-1, 2]]] },
    ],
    water: { aft: 5, fore: 4.5, day: '2026-10-17' },
    profile: {
      outline: [[-2.5, 5.2], [0, 0.3], [4, 0], [90, 0], [93.5, 4], ...[...deck].reverse(), [-3.5, 8.4]],
      deck,
      waterlines: [1.5, 3, 4.75, 6].map((z) => ({ z, label: z === 4.75 ? 'WL' : '' })),
    },
    plan: {
      outline: xs.map((x): Point => [x, half(x, depth)]),
      waterlines: [1.5, 3, 4.75].map((z) => ({ z, points: xs.map((x): Point => [x, half(x, z)]) })),
    },
    sections: range(10).map((t) => ({ x: t * length, points: range(16).map((v): Point => [half(t * length, v * depth), v * depth]) })),
    frames: Array.from({ length: 151 }, (_, i) => ({ label: String(i), x: i * 0.61 })),
    strakes: names.map((name, i) => ({ name, lower: edge(i), upper: edge(i + 1) })),
    shell: { edge: edge(names.length), lines: [] },
    spaces: [{ id: 's1', name: 'Engine room', x: [24, 42], y: [-6, 6], z: [0.8, 6] }],
    marks: marks(),
  }
}

function marks(): Mark[] {
  const readings = Array.from({ length: 60 }, (_, i): Mark => {
    const x = 8 + ((i * 37) % 80)
    const z = 0.6 + ((i * 13) % 40) / 10
    return {
      kind: 'thickness', id: `t${i}`, label: `${(9.6 - (i % 7) * 0.4).toFixed(1)} mm`, place: `Fr ${Math.round(x / 0.61)}, strake C, port`,
      x, y: half(x, z), z, girth: girth(x, z), side: i % 2 ? 'P' : 'S', worry: (i % 19 === 0 ? 2 : i % 7 === 0 ? 1 : 0),
    }
  })
  return [
    { kind: 'gland', id: 'g1', label: 'Port stern gland', place: 'Fr 12, port', x: 7.3, y: 3, z: 1.9, girth: 2.6, side: 'P', worry: 3 },
    { kind: 'opening', id: 'o1', label: 'Main injection, one barrier', place: 'Fr 52, strake B, starboard', x: 31.7, y: -4, z: 0.9, girth: 4.1, side: 'S', worry: 2 },
    ...readings,
  ]
}

export const method: Method = {
  id: 'plating.wastage', title: 'Wastage against a rule', about: 'How much of a plate may go before it must be renewed, by the rule that is followed.',
  subject: 'plating', sources: ['Army Bulletin TB 55-1900-201-45, reprinting NVIC 7-68'], cautions: ['A surveyor decides whether a plate may stay.'],
  holds: 'Rolled plate under uniform wastage; not pits.', accuracy: 'As good as the original thickness is known.',
  inputs: [
    { key: 'original', symbol: 't0', label: 'original thickness', unit: 'mm', type: 'number', over: 0, max: 100, required: true, help: 'nominal, from the plan' },
    { key: 'rule', label: 'rule', type: 'enum', enum: ['25-percent', '20-percent-plus-1-mm', 'own'], default: '25-percent', required: true },
    { key: 'readings', label: 'readings', type: 'table', required: false, fields: [
      { key: 'place', label: 'place', type: 'text', required: true },
      { key: 'thickness', label: 'thickness', unit: 'mm', type: 'number', over: 0, required: true },
    ] },
  ],
  results: [{ key: 'limit', symbol: 't_min', label: 'least thickness allowed', unit: 'mm', type: 'number', required: true }],
}

export const sheet: Sheet = {
  id: 'plating.wastage@C37', method: method.id, title: method.title, subject: 'strake C, frame 37½, port', about: method.about, cautions: method.cautions,
  inputs: [
    { key: 'original', symbol: 't0', label: 'original thickness', value: 12.7, unit: 'mm', text: '12.7 mm', basis: 'documented', basis_note: 'shell expansion, 1931', typed: '1/2"' },
    { key: 'share', symbol: 'q', label: 'share allowed to go', value: 0.25, unit: '-', text: '0.25', basis: 'assumed', basis_note: 'default' },
  ],
  steps: [
    { symbol: 't_min', formula: 't0*(1 - q)', value: 0.009525, unit: 'm', text: 'what is left when the share has gone' },
    { symbol: 'r', formula: 'sqrt(2*g*h)/(t0 + t_min)', value: 402.5, unit: '1/s', text: 'a fraction with a root, to be set' },
  ],
  results: [
    { key: 'limit', symbol: 't_min', label: 'least thickness allowed', value: 9.525, unit: 'mm', text: '9.5 mm', p10: 9.3, p50: 9.5, p90: 9.8 },
    { key: 'verdicts', label: 'readings against it', unit: '', text: '', value: [{ place: 'Fr 37½ P', thickness: 9.1, verdict: 'refer' }, { place: 'Fr 38 P', thickness: 11.9, verdict: 'sound' }] },
    { key: 'course', label: 'thickness by year', unit: '', text: '', value: [0, 2, 4, 6, 8, 10].map((n) => ({ year: 2026 + n, likely: 9.1 - 0.07 * n, worst: 9 - 0.12 * n })),
      fields: ['year', 'likely', 'worst'].map((key): Field => ({ key, label: key, ...(key === 'year' ? {} : { unit: 'mm' }), type: 'number', required: true })) },
  ],
  warnings: ['Fewer than ten readings: the worst was hardly met.'], sources: method.sources,
  holds: 'Rolled plate under uniform wastage; not pits.', accuracy: 'As good as the original thickness is known.',
}

const kind = (name: string, title: string, plural: string, group: KindGroup) => ({ kind: name, name, title, plural, group, about: '', file: `${name}.csv` })

export const kinds: Kind[] = [
  { ...kind('particulars', 'particulars', 'particulars', 'ship'), count: 1, fields: [
    { key: 'name', label: 'name', type: 'text', required: true },
    { key: 'lbp', label: 'length between perpendiculars', type: 'number', unit: 'm', over: 0, max: 500, required: false },
  ] },
  { ...kind('frame_system', 'frame system', 'frame systems', 'ship'), count: 0, fields: [
    { key: 'spacing', label: 'frame spacing', type: 'list', unit: 'm', required: true },
  ] },
  { ...kind('hull_form', 'hull form', 'hull forms', 'ship'), count: 0, fields: [
    { key: 'half_breadths', label: 'half breadths', type: 'grid', unit: 'm', required: false },
  ] },
  { ...kind('thickness', 'thickness reading', 'thickness readings', 'survey'), count: 2, fields: [
    { key: 'place', label: 'place', type: 'text', required: true },
    { key: 'thickness', label: 'thickness', type: 'number', unit: 'mm', min: 0, max: 500, required: false },
    { key: 'date', label: 'date', type: 'date', required: false },
    { key: 'notes', label: 'notes', type: 'text', required: false },
  ] },
  { ...kind('matter', 'matter', 'matters', 'plan'), count: 8, fields: [{ key: 'title', label: 'title', type: 'text', required: true }] },
]

export const entry: Entry = {
  kind: 'thickness', id: 't1', version: 3, label: 'thickness reading at Fr 37½, C, P', by: 'M. Orr', at: '2026-11-02T10:14:00Z',
  body: { place: 'Fr 37½, C, P', thickness: 11.811, date: '2023-06-02' }, typed: { thickness: '.465 in' },
}

/** What the program answers, for the tests that change nothing. */
export function answer(method_: string, path: string): { status: number; body: unknown } {
  const ok = (body: unknown) => ({ status: 200, body })
  const [, what = '', ...rest] = path.replace(/^\/api\/v1/, '').split('?')[0]!.split('/')
  if (method_ === 'GET' && what === 'ship') return ok(ship)
  if (method_ === 'GET' && what === 'brief') return ok(brief)
  if (method_ === 'GET' && what === 'drawing') return ok(drawing())
  if (what === 'sheets') return ok(sheet)
  if (what === 'methods' && rest.length === 0) return ok([method, { ...method, id: 'tide.window', title: 'Hours of enough water', about: 'When she can leave.', subject: 'tide' }])
  if (what === 'methods') return method_ === 'POST' ? ok(sheet) : ok(method)
  if (what === 'kinds') return ok(kinds)
  if (what === 'journal') return ok([{ revision: 412, at: entry.at, by: entry.by, what: 'corrected thickness reading at Fr 37½', count: 1, records: [{ kind: 'thickness', id: 't1', version: 3 }] }])
  if (what === 'records' && rest[2] === 'history') return ok([entry, { ...entry, version: 2, typed: {}, body: { ...entry.body, thickness: 12 } }])
  if (what === 'records' && rest[1]) return ok(entry)
  if (what === 'records') return ok({ items: [entry, { ...entry, id: 't2', label: 'thickness reading at Fr 38, C, P', typed: {}, body: { place: 'Fr 38, C, P', date: '2023-06-02' } }], total: 2 })
  return { status: 404, body: { title: 'there is nothing at this address', status: 404 } }
}
