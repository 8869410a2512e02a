// The ship and her brief as last read, one reading for all pages. Whatever changes a record calls forget.
import { client } from '../api/client'
import type { Brief, Drawing, ShellMap, ShipHead } from '../api/contract'
import { address, router } from './route.svelte'
import { reader } from './units.svelte'

class Reading {
  #turn = $state(0)
  #kept = new Map<string, Promise<unknown>>()

  /** The day looked at, or none for the ship's own today. */
  get day(): string | undefined {
    return router.current.query.get('day') ?? undefined
  }

  get ship(): Promise<ShipHead> {
    return this.#once('ship', async () => {
      const ship = await client.ship()
      reader.currency = ship.currency
      return ship
    })
  }

  get brief(): Promise<Brief> {
    const day = this.day
    const { units } = reader
    return this.#once(`brief ${day ?? ''} ${units}`, () => client.brief(day, units))
  }

  get drawing(): Promise<Drawing> {
    const day = this.day
    return this.#once(`drawing ${day ?? ''}`, () => client.drawing(day))
  }

  /** The map of her shell: heavy, so it is asked for by the page that shows it. */
  get shell(): Promise<ShellMap> {
    const day = this.day
    return this.#once(`shell ${day ?? ''}`, () => client.shell(day))
  }

  /** Lets every page read again: a record has changed. */
  forget(): void {
    this.#kept.clear()
    this.#turn++
  }

  #once<T>(what: string, read: () => Promise<T>): Promise<T> {
    void this.#turn // a page that read before a change reads again
    let kept = this.#kept.get(what) as Promise<T> | undefined
    if (!kept) {
      kept = read()
      kept.catch(() => this.#kept.delete(what))
      this.#kept.set(what, kept)
    }
    return kept
  }
}

export const reading = new Reading()

/** An address inside the pages, keeping the day that is looked at. */
export function to(...parts: string[]): string {
  return address(parts, reading.day)
}
