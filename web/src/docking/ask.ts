// What the Docking page tries, asked of the program.
import type { Figure } from '../api/contract'
import { Problem } from '../api/problem'
import type { components } from '../api/types'
import { reading } from '../shell/brief.svelte'

type Schemas = components['schemas']
/** A list that the program sends is never null. */
type Sure<T> = T extends { basis: string; text: string; label: string } ? Figure : T extends readonly (infer E)[] ? Sure<E>[] : T extends object ? { [K in keyof T]: Sure<Exclude<T[K], null>> } : T

export type Sequence = Sure<Schemas['AssessDockSequence']>
export type Stage = Sure<Schemas['AssessDockStage']>
export type Blocks = Sure<Schemas['AssessDockBlocks']>
export type FloodCase = Sure<Schemas['AssessFloodCase']>
export type FloodHole = Schemas['AssessFloodHole']
export type FloodRow = Sure<Schemas['AssessFloodRow']>
export type WeightTrial = Sure<Schemas['AssessWeightTrial']>
export type Shape = Sure<Schemas['AssessShape']>

export interface SequenceQuery {
  dock: string
  stern?: boolean
  ballast?: boolean
  trim?: number | undefined
  kg?: number | undefined
  slope?: number | undefined
  changes?: string[]
  step?: number
}

async function ask<T>(path: string, query: Record<string, unknown>, init?: RequestInit): Promise<T> {
  const asked = new URLSearchParams()
  for (const [key, value] of Object.entries({ ...query, day: reading.day })) {
    if (value === undefined || value === '' || (Array.isArray(value) && !value.length)) continue
    asked.set(key, Array.isArray(value) ? value.join(',') : String(value))
  }
  const response = await fetch(`/api/v1/docking/${path}?${asked}`, init)
  const answer: unknown = await response.json().catch(() => undefined)
  if (!response.ok) throw new Problem(response.status, (answer as object) ?? {})
  return answer as T
}

function send(body: unknown): RequestInit {
  return { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) }
}

export const askSequence = (q: SequenceQuery) => ask<Sequence>('sequence', { ...q })
export const askBlocks = (dock: string, without: number[], ballast: boolean) => ask<Blocks>('blocks', { dock, without, ballast })
export const askFlood = (trial: { holes: FloodHole[]; pumps: string[]; open: string[]; shut: string[]; hours: number }) => ask<FloodCase>('flooding', {}, send(trial))
export const askTable = () => ask<FloodRow[]>('flooding/table', {})
export const askWeights = (moves: unknown[]) => ask<WeightTrial>('weights', {}, send(moves))
export const askShape = () => ask<Shape>('shape', {})

/** Asks one question at a time, and after it the newest that came meanwhile: a dragged slider does not queue up what nobody waits for. */
export function newest<Q, A>(ask: (q: Q) => Promise<A>, took: (a: A) => void, failed: (err: unknown) => void): (q: Q) => void {
  let busy = false
  let next: { q: Q } | undefined
  const run = (q: Q) => {
    busy = true
    ask(q).then(took, (err: unknown) => next ?? failed(err)).finally(() => {
      busy = false
      const one = next
      next = undefined
      if (one) run(one.q)
    })
  }
  return (q) => (busy ? (next = { q }) : run(q))
}
