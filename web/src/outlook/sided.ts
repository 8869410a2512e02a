// The plans side by side: one row for each figure, and for each difference from the first plan.
import type { Figure, PlanFuture } from '../api/contract'

const figures = ['water', 'emergency', 'loss', 'docked', 'bill', 'deferred', 'cost', 'income'] as const

export interface Sided {
  label: string
  /** A cell of the first plan is empty where the row is a difference from it. */
  cells: (Figure | undefined)[]
}

export function sided(plans: readonly PlanFuture[]): Sided[] {
  const first = plans[0]
  if (!first) return []
  const own = figures.map((key) => ({ label: first[key].label, cells: plans.map((p) => p[key]) }))
  const other = plans[1]?.more ?? []
  return [...own, ...other.map((d, i) => ({ label: d.label, cells: plans.map((p) => p.more[i]) }))]
}
