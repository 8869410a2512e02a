// The words that the program and its pages exchange, by the names the pages use. The shapes come from the program's own description (types.ts,
// written by `make generate`); here only what a description can't say is made narrower: a list is never null, a basis is one of five.
import type { components } from './types'

type Schemas = components['schemas']

export type Basis = 'measured' | 'documented' | 'assumed' | 'computed' | 'unknown'
export type Audience = 'private' | 'board' | 'public'
/** 0 none, 1 watch, 2 act, 3 now. */
export type Worry = 0 | 1 | 2 | 3
export type FieldType = 'number' | 'integer' | 'text' | 'enum' | 'boolean' | 'date' | 'list' | 'grid' | 'table' | 'group' | 'hull' | 'place'
export type KindGroup = 'ship' | 'survey' | 'plan'
export type Point = [number, number]

/** The narrower type of a property by its name, or its own. */
type Named<K, V> = K extends 'basis' ? Basis : K extends 'worry' ? Worry : K extends 'group' ? KindGroup : K extends 'mark' ? Audience : Whole<V>

/** A schema as the program really sends it. */
type Whole<T> = T extends readonly (infer E)[]
  ? Whole<Exclude<E, null>>[]
  : T extends object
    ? { [K in keyof T]: Extract<T[K], readonly unknown[]> extends never ? Named<K, T[K]> : Whole<Exclude<T[K], null>> }
    : T

export type ShipHead = Whole<Schemas['AppHeading']>
export type Brief = Whole<Schemas['BriefAnswer']>
export type Figure = Whole<Schemas['AssessFigure']>
export type Futures = Whole<Schemas['AssessFuturesPart']>
export type PlanFuture = Whole<Schemas['AssessPlanFuture']>
export type FuturesStudy = Whole<Schemas['AssessFuturesStudy']>
export type TriggerTrial = Whole<Schemas['AssessTriggerTrial']>
export type OutlookRow = Whole<Schemas['AssessOutlookRow']>
export type FloodRow = Whole<Schemas['AssessFloodRow']>
export type Story = Whole<Schemas['AssessStory']>
export type Notice = Whole<Schemas['AssessNotice']>
export type ShellMap = Whole<Schemas['AssessShellMap']>
export type ShellCell = Whole<Schemas['AssessShellCell']>
export type Happening = Whole<Schemas['AssessHappening']>
export type ProtectionPart = Whole<Schemas['AssessProtectionPart']>
export type ShaftRow = Whole<Schemas['AssessShaftRow']>
export type MatterRow = Whole<Schemas['AssessMatterRow']>
export type VoiceRow = Whole<Schemas['AssessVoiceRow']>
export type TriggerRow = Whole<Schemas['AssessTriggerRow']>
export type DecisionRow = Whole<Schemas['AssessDecisionRow']>
export type PotRow = Whole<Schemas['AssessPotRow']>
export type EnoughRow = Whole<Schemas['AssessEnoughRow']>
export type RungRow = Whole<Schemas['AssessRungRow']>
export type GiftRow = Whole<Schemas['AssessGiftRow']>
export type BidRow = Whole<Schemas['AssessBidRow']>
export type DraftRow = Whole<Schemas['AssessDraftRow']>
export type PartRow = Whole<Schemas['AssessPartRow']>
export type QuestionRow = Whole<Schemas['AssessQuestionRow']>
export type PhotoRow = Whole<Schemas['AssessPhotoRow']>
export type Contract = Whole<Schemas['AssessContractPart']>
export type CalendarLane = Whole<Schemas['AssessLane']>
export type YardCase = Whole<Schemas['AssessYardCase']>
export type Network = Whole<Schemas['AssessNetworkPart']>
/** One page of the brief: the answer in a sentence or a few, then what it rests on. */
export interface PageBrief {
  heading: string[]
  missing: Notice[]
}

/** A drawing's pairs of numbers are points. */
type Drawn<T> = T extends number[] ? Point : T extends (infer E)[] ? Drawn<E>[] : T extends object ? { [K in keyof T]: Drawn<T[K]> } : T
export type Drawing = Drawn<Whole<Schemas['AssessDrawing']>>
/** A thing at its place: x from aft, y from the middle to port, z from the base, girth along the shell from the keel, in metres. */
export type Mark = Whole<Schemas['AssessMark']>

export type Field = Omit<Whole<Schemas['FieldField']>, 'type' | 'fields'> & { type: FieldType; fields?: Field[] }
export type SheetLine = Omit<Whole<Schemas['CalcLine']>, 'fields'> & { fields?: Field[] }
export type SheetStep = Whole<Schemas['CalcStep']>
export type Sheet = Omit<Whole<Schemas['CalcSheet']>, 'inputs' | 'results'> & { inputs: SheetLine[]; results: SheetLine[] }
export type MethodHead = Whole<Schemas['CalcInfo']>
export type Method = MethodHead & { inputs: Field[]; results: Field[] }

export type Kind = Omit<Whole<Schemas['KindAnswer']>, 'fields'> & { fields: Field[] }
export type Body = Record<string, unknown>
export type Entry = Whole<Schemas['Entry']>
/** A record as it is sent. */
export type Sent = Schemas['Sent']
export interface Records {
  items: Entry[]
  total: number
  /** Where the following page starts. */
  next?: string
}
export type Step = Whole<Schemas['AppStep']>
/** What a phone scans to be let in. */
export type Pairing = Schemas['PairingAnswer']

/** An open file of rows: how it would be read, and what its first rows would become. */
export type Intake = Whole<Schemas['IntakeAnswer']>
export type IntakeGuess = Intake['guess']
export type IntakeQuestion = IntakeGuess['questions'][number]
export type IntakeRow = Intake['preview'][number]
/** What became of a file. */
export type Landing = Whole<Schemas['LandingAnswer']>

/** Problem details (RFC 9457), with the field at fault and both versions where a stale write was refused. */
export interface ProblemBody {
  title?: string
  status?: number
  detail?: string
  field?: string
  errors?: { message?: string; location?: string; value?: unknown }[] | null
  mine?: Entry
  theirs?: Entry
}
