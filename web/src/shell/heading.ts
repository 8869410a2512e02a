import type { PageBrief } from '../api/contract'

/** The sentences that head a page, one or several. */
export function headings(page: PageBrief | undefined): string[] {
  return [page?.heading ?? []].flat().filter(Boolean)
}
