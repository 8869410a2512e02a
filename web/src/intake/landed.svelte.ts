// The file that landed last, kept while the pages are read anew with what it brought.
import type { Landing } from '../api/contract'

class Last {
  landing = $state.raw<Landing>()
}

export const last = new Last()
