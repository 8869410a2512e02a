import { text } from '../text'

export type PageKey = keyof typeof text.pages
export type ToolKey = keyof typeof text.tools

export function isPage(key: string): key is PageKey {
  return Object.hasOwn(text.pages, key)
}

export function isTool(key: string): key is ToolKey {
  return Object.hasOwn(text.tools, key)
}

/** What a page is called, for the window and the title block. */
export function title(parts: string[]): string {
  const [first = '', second] = parts
  if (isPage(first)) return second ? `${text.pages[first].name}: ${second}` : text.pages[first].name
  if (isTool(first)) return text.tools[first]
  if (first === 'methods') return second ?? text.methods.title
  return first === '' ? '' : first
}
