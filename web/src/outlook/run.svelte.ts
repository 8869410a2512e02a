// A long run of the futures: its progress, its answer, and a way to stop it. Closing the stream stops the run in the program too.
import type { Futures } from '../api/contract'
import { reading } from '../shell/brief.svelte'

export class Run {
  done = $state(0)
  of = $state(0)
  running = $state(false)
  stopped = $state(false)
  refused = $state('')
  answer = $state<Futures>()
  #stream: EventSource | undefined

  start(n: number): void {
    this.stop()
    this.running = true
    this.stopped = false
    this.refused = ''
    this.done = 0
    const day = reading.day
    this.#stream = new EventSource(`/api/v1/futures?n=${n}${day ? `&day=${day}` : ''}`)
    this.#stream.addEventListener('progress', (e) => this.#hear(e))
    this.#stream.addEventListener('done', (e) => {
      this.answer = JSON.parse((e as MessageEvent<string>).data) as Futures
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
