import { text } from '../text'

/** What rows come to in one line: how many there are, and how many of them ask for something, the worst first. */
export function verdict(rows: readonly object[]): string {
  const worst = rows.map((row) => Math.max(worry(row), ...Object.values(row).map(worry)))
  const asking = [3, 2, 1].map((w) => [worst.filter((one) => one === w).length, text.worry[w]!] as const)
  return text.table.verdict(rows.length, asking.filter(([n]) => n > 0).map(([n, word]) => `${n} ${word}`))
}

/** Of a figure, a notice, or anything else, which then asks for nothing. */
function worry(value: unknown): number {
  const of = typeof value === 'object' && value !== null && 'worry' in value ? value.worry : 0
  return typeof of === 'number' ? of : 0
}
