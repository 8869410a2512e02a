import type { Entry, ProblemBody } from './contract'

/** A refusal of the program: in words, and by field where a field is at fault. */
export class Problem extends Error {
  readonly status: number
  /** What is wrong with which field, by path: "zones[2].area". */
  readonly fields: Record<string, string>
  /** The version that stands, where a stale write was refused. */
  readonly theirs: Entry | undefined

  constructor(status: number, body: ProblemBody) {
    super(body.detail || body.title || `the program answered ${status}`)
    this.status = status
    this.theirs = body.theirs
    this.fields = {}
    for (const one of body.errors ?? []) this.fields[fieldOf(one.location)] = one.message ?? ''
    if (body.field) this.fields[body.field] = this.message
  }
}

/** The field's path inside what was sent: the description says "body.inputs.bore", the form "bore". */
function fieldOf(location = ''): string {
  return location.replace(/^body\.?/, '').replace(/^inputs\.|^body\./, '')
}

/** The refusal as people read it, whatever went wrong. */
export function said(err: unknown): string {
  return err instanceof Error ? err.message : String(err)
}
