// A trigger while it is written: its record as typed, what the futures say of it as it stands, and what was refused. Nothing typed is lost by a refusal.
import { client } from '../api/client'
import type { Field, TriggerTrial } from '../api/contract'
import { Problem, said } from '../api/problem'
import { blank, filled, values, type Draft } from '../quantity/draft'
import { headFields, sent, whole } from '../records/sent'
import { reading } from '../shell/brief.svelte'
import { words } from './words'

const wait = 500 // ms after the last stroke

export class Writing {
  fields = $state.raw<Field[]>([])
  draft = $state.raw<Draft>({})
  trial = $state.raw<TriggerTrial>()
  trying = $state(false)
  wrong = $state.raw<Record<string, string>>({})
  refused = $state('')
  readonly #id: string | undefined
  #version: number | undefined
  #turn = 0
  #timer: ReturnType<typeof setTimeout> | undefined

  constructor(id?: string) {
    this.#id = id
  }

  async read(): Promise<void> {
    const kind = (await client.kinds()).find((k) => k.kind === 'trigger')
    this.fields = [...(kind?.fields ?? []), ...headFields]
    if (this.#id) {
      const e = await client.record('trigger', this.#id)
      this.#version = e.version
      this.draft = filled(this.fields, whole(e).body, e.typed)
    } else this.draft = { ...blank(this.fields), direction: 'worse', when: 'at all', measure: 'seen', finding: 'plate' }
    void this.try()
  }

  value(key: string): string {
    const e = this.draft[key]
    return typeof e === 'string' ? e : ''
  }

  choices(key: string): string[] {
    return this.fields.find((f) => f.key === key)?.enum ?? []
  }

  set(key: string, value: string): void {
    this.draft = { ...this.draft, [key]: value }
    clearTimeout(this.#timer)
    this.#timer = setTimeout(() => void this.try(), wait)
  }

  /** Tries the trigger as it is written now; an answer to an older wording is let go. */
  async try(): Promise<void> {
    clearTimeout(this.#timer)
    const turn = ++this.#turn
    this.trying = true
    try {
      const trial = await client.tryTrigger({ ...sent(values(this.fields, this.draft)), ...(this.#id ? { id: this.#id } : {}) }, reading.day)
      if (turn !== this.#turn) return
      this.trial = trial
      this.#accept()
    } catch (err) {
      if (turn === this.#turn) this.#refuse(err)
    } finally {
      if (turn === this.#turn) this.trying = false
    }
  }

  async save(): Promise<boolean> {
    const body = sent(values(this.fields, this.draft))
    try {
      if (this.#id && this.#version !== undefined) await client.correct('trigger', this.#id, body, this.#version)
      else await client.enter('trigger', body)
    } catch (err) {
      this.#refuse(err)
      if (err instanceof Problem && err.status === 412) this.refused = words.clash
      return false
    }
    return true
  }

  stop(): void {
    clearTimeout(this.#timer)
    this.#turn++
  }

  #accept(): void {
    this.wrong = {}
    this.refused = ''
  }

  #refuse(err: unknown): void {
    this.wrong = err instanceof Problem ? err.fields : {}
    this.refused = said(err)
  }
}
