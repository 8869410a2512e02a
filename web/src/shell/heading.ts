import type { PageBrief } from '../api/contract'

/** The sentences that head a page. */
export function headings(page: PageBrief): string[] {
  return page.heading.filter(Boolean)
}
