/** A moment of the journal as it is read: 2026-11-02 10:14, in the reader's own time. */
export function when(moment: string): string {
  const at = new Date(moment)
  if (Number.isNaN(at.getTime()) || !moment.includes('T')) return moment
  const two = (n: number) => String(n).padStart(2, '0')
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${two(at.getHours())}:${two(at.getMinutes())}`
}
