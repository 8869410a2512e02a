// The units a person likes to read, kept in this browser. As entered is as records and methods declare them.
export const systems = ['as-entered', 'metric', 'us'] as const
export type Units = (typeof systems)[number]

const key = 'oakum units'

function kept(): Units {
  try {
    return systems.find((s) => s === localStorage.getItem(key)) ?? 'as-entered'
  } catch {
    return 'as-entered' // a browser that keeps nothing still reads
  }
}

class Reader {
  #units = $state<Units>(kept())

  /** What the ship counts her money in, once she is read. */
  currency = $state('money')

  get units(): Units {
    return this.#units
  }
  set units(wanted: Units) {
    this.#units = wanted
    try {
      localStorage.setItem(key, wanted)
    } catch {
      // chosen for this visit only
    }
  }
}

export const reader = new Reader()

/** A figure's value in the unit it is declared in, for a page that reckons with it. */
export function declared(f: { value?: number | null; declared?: number | null }): number | undefined {
  return f.declared ?? f.value ?? undefined
}
