// What each sheet asks, in the order a hand in a glove would answer it: the photograph first, the words last. Keys and units are those of the program's
// kinds of record; a share is asked in hundredths and kept as a part of one.

/** An ask that is only put where the first choice of the sheet is one of these. */
interface Put {
  when?: readonly string[]
}

export type Ask = Put & Asked

type Asked =
  | { as: 'choice'; key: string; label: string; options: readonly string[]; needed?: boolean }
  | { as: 'number'; key: string; label: string; unit: string; low: number; high: number; needed?: boolean; whole?: boolean; hundredths?: boolean }
  | { as: 'numbers'; key: string; label: string; unit: string; needed?: boolean }
  | { as: 'words'; key: string; label: string; long?: boolean; needed?: boolean }
  | { as: 'flag'; key: string; label: string }
  | { as: 'zone'; key: string; label: string }
  | { as: 'space'; key: string; label: string }
  | { as: 'place' }
  | { as: 'photo'; needed?: boolean }

export interface SheetDef {
  name: string
  kind: string
  title: string
  asks: readonly Ask[]
  /** What every record of the sheet carries besides. */
  fixed?: Record<string, unknown>
  basis?: string
  /** The kind has a time of day. */
  timed: boolean
  /** The key of whoever made it, where the kind has one. */
  who?: string
}

export const findings = ['plate', 'pit', 'crack', 'through', 'doubler', 'opening', 'gland', 'bearing', 'shaft', 'propeller', 'rudder', 'coating', 'anode', 'fouling', 'frames', 'timber', 'other'] as const
const directions = ['forward', 'aft', 'port', 'starboard', 'up', 'down', 'at the plate'] as const

export const sheets: readonly SheetDef[] = [
  {
    name: 'found', kind: 'found', title: 'Found report', basis: 'measured', timed: false, who: 'who',
    asks: [
      { as: 'photo' },
      { as: 'choice', key: 'finding', label: 'What', options: findings, needed: true },
      { as: 'place' },
      { as: 'choice', key: 'against', label: 'Against what was expected', options: ['better', 'as expected', 'worse'] },
      { as: 'number', key: 'thickness', label: 'Thickness left', unit: 'mm', low: 0, high: 500, when: ['plate', 'pit', 'through', 'doubler', 'opening', 'frames'] },
      { as: 'number', key: 'depth', label: 'Depth', unit: 'mm', low: 0, high: 1000, when: ['pit', 'crack', 'timber'] },
      { as: 'number', key: 'length', label: 'Length', unit: 'm', low: 0, high: 500, when: ['crack', 'gland', 'propeller', 'rudder', 'shaft', 'frames', 'timber'] },
      { as: 'number', key: 'clearance', label: 'Clearance', unit: 'mm', low: 0, high: 500, when: ['bearing', 'shaft', 'rudder', 'gland'] },
      { as: 'number', key: 'area', label: 'Area', unit: 'm²', low: 0, high: 10000, when: ['plate', 'pit', 'doubler', 'coating', 'fouling', 'timber'] },
      { as: 'number', key: 'share', label: 'Share of the surface', unit: '%', low: 0, high: 100, hundredths: true, when: ['coating', 'fouling', 'anode'] },
      { as: 'number', key: 'count', label: 'How many', unit: '', low: 0, high: 100000, whole: true, when: ['through', 'opening', 'anode', 'frames', 'other'] },
      { as: 'words', key: 'condition', label: 'What it looks like', long: true },
      { as: 'words', key: 'proposed', label: 'What to do', long: true },
    ],
  },
  {
    name: 'reading', kind: 'thickness', title: 'Thickness reading', basis: 'measured', timed: true, who: 'who', fixed: { in_dock: true },
    asks: [
      { as: 'place' },
      { as: 'number', key: 'thickness', label: 'Thickness', unit: 'mm', low: 0, high: 500 },
      { as: 'choice', key: 'result', label: 'Result', options: ['read', 'no echo', 'not reached', 'through', 'doubtful'] },
      { as: 'number', key: 'pit_depth', label: 'Depth of pit', unit: 'mm', low: 0, high: 500 },
      { as: 'choice', key: 'paint', label: 'Over paint', options: ['yes', 'no', 'unknown'] },
      { as: 'choice', key: 'taken_from', label: 'Taken from', options: ['inside', 'outside'] },
      { as: 'words', key: 'notes', label: 'Notes', long: true },
    ],
  },
  {
    name: 'leak', kind: 'leak', title: 'Leak', basis: 'measured', timed: true, who: 'who',
    asks: [
      { as: 'photo' },
      { as: 'place' },
      { as: 'choice', key: 'source', label: 'Through', options: ['plate', 'rivet', 'seam', 'crack', 'gland', 'valve', 'blank', 'pipe', 'doubler', 'deck', 'rain', 'unknown'] },
      { as: 'number', key: 'rate', label: 'Rate', unit: 'L/h', low: 0, high: 10000000 },
      { as: 'choice', key: 'state', label: 'State', options: ['running', 'weeping', 'stopped', 'patched'] },
      { as: 'words', key: 'notes', label: 'Notes', long: true },
    ],
  },
  {
    name: 'film', kind: 'film', title: 'Paint film', basis: 'measured', timed: true, who: 'who',
    asks: [
      { as: 'zone', key: 'zone', label: 'Zone' },
      { as: 'place' },
      { as: 'numbers', key: 'readings', label: 'Readings, a space between', unit: 'µm', needed: true },
      { as: 'number', key: 'nominal', label: 'Nominal film', unit: 'µm', low: 1, high: 20000 },
      { as: 'choice', key: 'holiday', label: 'Holiday test', options: ['pass', 'fail', 'not done'] },
      { as: 'words', key: 'notes', label: 'Notes', long: true },
    ],
  },
  {
    name: 'climate', kind: 'climate', title: 'Climate', basis: 'measured', timed: true, who: 'who',
    asks: [
      { as: 'space', key: 'space', label: 'Space' },
      { as: 'number', key: 'air', label: 'Air', unit: '°C', low: -40, high: 60, needed: true },
      { as: 'number', key: 'humidity', label: 'Relative humidity', unit: '%', low: 0, high: 100, needed: true },
      { as: 'number', key: 'steel', label: 'Steel', unit: '°C', low: -40, high: 80 },
      { as: 'number', key: 'wind', label: 'Wind', unit: 'kn', low: 0, high: 150 },
      { as: 'flag', key: 'rain', label: 'Rain' },
    ],
  },
  {
    name: 'day', kind: 'day', title: 'Daily entry', basis: 'documented', timed: false,
    asks: [
      { as: 'words', key: 'weather', label: 'Weather' },
      { as: 'number', key: 'lost', label: 'Hours lost to weather', unit: 'h', low: 0, high: 24 },
      { as: 'number', key: 'people', label: 'People at work', unit: '', low: 0, high: 5000, whole: true },
      { as: 'words', key: 'done', label: 'Done', long: true, needed: true },
      { as: 'words', key: 'problems', label: 'Problems', long: true },
      { as: 'words', key: 'decided', label: 'Decided', long: true },
    ],
  },
  {
    name: 'photo', kind: 'photo', title: 'Photograph', basis: 'documented', timed: true, who: 'who',
    asks: [
      { as: 'photo', needed: true },
      { as: 'words', key: 'title', label: 'What it shows' },
      { as: 'place' },
      { as: 'choice', key: 'direction', label: 'Looking', options: directions },
      { as: 'choice', key: 'moment', label: 'Moment', options: ['before', 'as found', 'during', 'as left', 'after'] },
      { as: 'choice', key: 'consent', label: 'People in it agreed', options: ['yes', 'no', 'nobody in it'] },
      { as: 'words', key: 'scale', label: 'What gives the size' },
    ],
  },
]

/** What may be added to a found report that is already there. */
export const addition: SheetDef = {
  name: 'addition', kind: 'found', title: 'Found report', timed: false,
  asks: [
    { as: 'choice', key: 'disposition', label: 'What is done', options: ['open', 'repair', 'renew', 'insert', 'clad', 'double', 'fill', 'leave', 'monitor', 'defer'] },
    { as: 'words', key: 'as_left', label: 'As left', long: true },
    { as: 'words', key: 'condition', label: 'What it looks like', long: true },
    { as: 'photo' },
  ],
}

/** The asks that a sheet puts, given what is tapped so far. */
export function asked(sheet: SheetDef, draft: Record<string, string>): Ask[] {
  return sheet.asks.filter((ask) => !ask.when || ask.when.includes(draft.finding ?? ''))
}
