// Who writes, by the name the journal will carry: kept on this device, so that a shared log-in still says whose hand it was.
const key = 'oakum writer'

export const writer = {
  get name(): string {
    return localStorage.getItem(key) ?? ''
  },
  set name(name: string) {
    localStorage.setItem(key, name.trim())
  },
}
