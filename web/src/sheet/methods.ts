import type { MethodHead } from '../api/contract'

/** The methods that speak of every word asked for, in their name or in what they answer. */
export function find(methods: readonly MethodHead[], asked: string): MethodHead[] {
  const wanted = asked.toLowerCase().split(/\s+/).filter(Boolean)
  return methods.filter((m) => {
    const all = `${m.id} ${m.title} ${m.about} ${m.subject}`.toLowerCase()
    return wanted.every((word) => all.includes(word))
  })
}

/** The methods by subject, in the order they came. The subject is the first part of the ID where none is given. */
export function bySubject(methods: readonly MethodHead[]): [string, MethodHead[]][] {
  const subjects = new Map<string, MethodHead[]>()
  for (const m of methods) {
    const subject = m.subject || (m.id.split('.')[0] ?? m.id)
    subjects.set(subject, [...(subjects.get(subject) ?? []), m])
  }
  return [...subjects]
}
