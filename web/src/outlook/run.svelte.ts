// A long run in the program: its progress, its answer, and a way to stop it. Closing the stream stops the run in the program too.
import type { Contract, Futures, FuturesStudy } from '../api/contract'
import { reading } from '../shell/brief.svelte'

export class Run<T> {
  done = $state(0)
  of = $state(0)
  running = $state(false)
  stopped = $state(false)
  refused = $state('')
  answer = $state.raw<T>()
  readonly #path: string
  #stream: EventSource | undefined

  constructor(path: string) {
    this.#path = path
  }

  start(n: number, plans: readonly string[] = []): void {
    this.begin({ n: String(n), ...(plans.length ? { plans: plans.join(',') } : {}) })
  }

  begin(asked: Record<string, string>): void {
    this.stop()
    this.running = true
    this.stopped = false
    this.refused = ''
    this.done = 0
    const query = new URLSearchParams(asked)
    if (reading.day) query.set('day', reading.day)
    this.#stream = new EventSource(`/api/v1/${this.#path}?${query}`)
    this.#stream.addEventListener('progress', (e) => this.#hear(e))
    this.#stream.addEventListener('done', (e) => {
      this.answer = JSON.parse((e as MessageEvent<string>).data) as T
      this.#close()
    })
    this.#stream.addEventListener('refused', (e) => {
      this.refused = (JSON.parse((e as MessageEvent<string>).data) as { detail: string }).detail
      this.#close()
    })
    this.#stream.onerror = () => {
      if (this.running) this.stop()
    }
  }

  stop(): void {
    if (this.running) this.stopped = true
    this.#close()
  }

  #hear(e: Event): void {
    const told = JSON.parse((e as MessageEvent<string>).data) as { done: number; of: number }
    this.done = told.done
    this.of = told.of
  }

  #close(): void {
    this.#stream?.close()
    this.#stream = undefined
    this.running = false
  }
}

export const futuresRun = () => new Run<Futures>('futures')
export const contractRun = () => new Run<Contract>('money/contract/run')
export const studyRun = () => new Run<FuturesStudy>('futures/study')
