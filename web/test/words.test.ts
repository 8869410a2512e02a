// The pages' own words stand in the text catalogue, so that they can be translated: none is written into a component.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parse } from 'svelte/compiler'
import { expect, it } from 'vitest'

interface Node {
  type?: string
  name?: string
  data?: string
  [key: string]: unknown
}

const spoken = new Set(['aria-label', 'title', 'placeholder', 'alt'])

/** The words in a component's markup, and in the attributes that are read aloud or shown. */
function written(node: unknown, inside = ''): string[] {
  if (Array.isArray(node)) return node.flatMap((one) => written(one, inside))
  if (typeof node !== 'object' || node === null) return []
  const { type, name, data } = node as Node
  if (type === 'Text') return /\p{L}{2}/u.test(data ?? '') && (inside === '' || spoken.has(inside)) ? [data!.trim()] : []
  if (type === 'StyleDirective') return []
  const within = type === 'Attribute' ? (name ?? '') : inside
  return Object.entries(node)
    .filter(([key]) => !['css', 'instance', 'module', 'metadata', 'comments'].includes(key))
    .flatMap(([, child]) => written(child, within))
}

const components = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.svelte')).map((file) => join('src', file))

it('finds the components', () => {
  expect(components.length).toBeGreaterThan(30)
})

it.each(components)('%s holds no words of its own', (file) => {
  expect(written(parse(readFileSync(file, 'utf8'), { modern: true }))).toEqual([])
})

it('sees a word where there is one', () => {
  const { fragment } = parse('<p class="x y" title="Say">Hello {name}</p>', { modern: true })
  expect(written(fragment)).toEqual(['Say', 'Hello'])
})
