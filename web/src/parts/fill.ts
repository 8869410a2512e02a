import type { Worry } from '../api/contract'

/** The fill of a thing by how much it worries; nobody having looked is a fill of its own. Patterns.svelte draws them. */
export function fill(worry: Worry | undefined, unknown = false): string {
  if (unknown) return 'url(#fill-unknown)'
  return worry ? `url(#fill-${worry})` : 'var(--paper)'
}
