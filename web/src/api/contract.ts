// The words that the program and its pages exchange, by hand until `make generate` has written types.ts from the description.

export type Basis = 'measured' | 'documented' | 'assumed' | 'computed' | 'unknown'
export type Worry = 0 | 1 | 2 | 3

/** One value as people read it: text is what is shown (the range first, where there is one), value is in unit and null where nobody knows. */
export interface Figure {
  key: string
  label: string
  value: number | null
  unit: string
  text: string
  p10?: number
  p50?: number
  p90?: number
  basis: Basis
  basis_note?: string
  /** The sheet that made it. */
  sheet?: string
  place?: string
  /** The record it is about. */
  kind?: string
  id?: string
  note?: string
  /** 0 none, 1 watch, 2 act, 3 now. */
  worry?: Worry
}

/** One thing to know or to do. */
export interface Notice {
  what: string
  do?: string
  due?: string
  who?: string
  kind?: string
  id?: string
  place?: string
  page?: string
  worry?: Worry
}

export interface ShipHead {
  name: string
  revision: number
  day: string
  currency: string
  empty: boolean
}

/** The first page: what worries, when, what it costs, what is to be decided, what is overdue, what to enter next. */
export interface FrontBrief {
  empty: boolean
  sentence: string
  worst: Figure[]
  when?: Figure
  money?: Figure
  decision?: Notice
  overdue: Notice[]
  missing: Notice[]
}

/** One page of the brief: the answer in a sentence or a few, then what it rests on. */
export interface PageBrief {
  heading: string | string[]
  [part: string]: unknown
}

export interface Brief {
  day: string
  snapshot: string
  name: string
  front: FrontBrief
  ship: PageBrief
  standing: PageBrief
  outlook: PageBrief
  choices: PageBrief
  money: PageBrief
  docking: PageBrief
  indock: PageBrief
  record: PageBrief
  sheets?: string[]
}

export type FieldType =
  | 'number' | 'integer' | 'text' | 'enum' | 'boolean' | 'date' | 'list' | 'grid' | 'table' | 'group' | 'hull' | 'place'

/** One field of a record or of a method's input. Bounds are in unit. */
export interface Field {
  key: string
  symbol?: string
  label: string
  help?: string
  unit?: string
  type: FieldType
  default?: string
  min?: number
  max?: number
  over?: number
  under?: number
  enum?: string[]
  required: boolean
  /** The most entries that a list or table takes. */
  most?: number
  /** What a list holds, or which kind of record a text names. */
  of?: string
  fields?: Field[]
}

export interface SheetLine {
  key: string
  symbol?: string
  label: string
  value: unknown
  unit: string
  text: string
  basis?: Basis
  basis_note?: string
  /** As it was typed, where it was text. */
  typed?: string
  p10?: number
  p50?: number
  p90?: number
  /** The columns, where value is a table. */
  fields?: Field[]
}

export interface SheetStep {
  symbol: string
  /** Empty where the step is a table, an integral or a solve; text then says what was done. */
  formula: string
  value: number
  unit: string
  text: string
}

export interface Sheet {
  id: string
  method: string
  title: string
  subject?: string
  about: string
  cautions: string[]
  inputs: SheetLine[]
  steps: SheetStep[]
  results: SheetLine[]
  warnings: string[]
  sources: string[]
  holds: string
  accuracy: string
}

export interface MethodHead {
  id: string
  title: string
  about: string
  subject: string
}

export interface Method extends MethodHead {
  inputs: Field[]
  results: Field[]
  sources: string[]
  cautions: string[]
  holds?: string
}

export type KindGroup = 'ship' | 'survey' | 'plan'

export interface Kind {
  kind: string
  title: string
  plural: string
  group: KindGroup
  fields: Field[]
  count: number
}

export type Body = Record<string, unknown>

export interface Entry {
  kind: string
  id: string
  version: number
  /** What it is called in a sentence. */
  label?: string
  body: Body
  by: string
  at: string
  mark?: 'private' | 'board' | 'public'
  deleted?: boolean
}

/** One step of the journal: what was changed, by whom, when. */
export interface JournalLine {
  revision: number
  at: string
  by: string
  what: string
  kind?: string
  id?: string
}

export type Point = [number, number]
export type Side = 'P' | 'S' | 'C'

/** A thing at its place: x from aft, y from the middle to port, z from the base, girth along the shell from the keel, in metres. */
export interface Mark {
  kind: string
  id: string
  label: string
  place: string
  x: number
  y: number
  z: number
  girth: number
  side: Side
  worry?: Worry
}

export interface Drawing {
  particulars: { length: number; beam: number; depth: number; draft?: number }
  profile: { outline: Point[]; deck: Point[]; waterlines: { z: number; points?: Point[]; label?: string }[] }
  plan: { outline: Point[]; waterlines: { z: number; points: Point[] }[] }
  sections: { x: number; points: Point[] }[]
  frames: { label: string; x: number }[]
  strakes: { name: string; lower: Point[]; upper: Point[] }[]
  marks: Mark[]
}

export interface IntakeColumn {
  index: number
  heading: string
  meaning: string
  unit: string
  why: string
}

export interface IntakeGuess {
  layout: string
  delimiter: string
  decimal: string
  unit: string
  kind?: string
  columns: IntakeColumn[]
}

export interface Intake {
  token: string
  guess: IntakeGuess
  preview: string[][]
  /** The meanings a column may have, for correcting the guess. */
  meanings?: string[]
}

export interface Landing {
  landed: number
  refused: { row: number; reason: string }[]
}

/** Problem details (RFC 9457) with the fields at fault. */
export interface ProblemBody {
  title?: string
  status?: number
  detail?: string
  errors?: { message: string; location?: string; value?: unknown }[]
  field?: string
  /** Both versions, where a stale write was refused. */
  mine?: Entry
  theirs?: Entry
}
