// Which page is open: the address is the only place that says so.

export interface Route {
  /** The parts of the path: /records/thickness/1 is ["records", "thickness", "1"]. */
  parts: string[]
  query: URLSearchParams
}

export function parse(address: string): Route {
  const url = new URL(address, 'http://ship')
  return { parts: url.pathname.split('/').filter(Boolean).map(decode), query: url.searchParams }
}

/** The address of a page, with the day that is looked at carried along. */
export function address(parts: string[], day?: string): string {
  const path = '/' + parts.map(encodeURIComponent).join('/')
  return day ? `${path}?day=${day}` : path
}

function decode(part: string): string {
  try {
    return decodeURIComponent(part)
  } catch {
    return part
  }
}

class Router {
  current = $state.raw<Route>({ parts: [], query: new URLSearchParams() })
  /** Counts the pages gone to, so that the shell can move the reading place once for each. */
  turns = $state(0)

  /** Follows the address and the links of the page. Returns what stops it. */
  start(): () => void {
    const read = () => (this.current = parse(location.href))
    const click = (event: MouseEvent) => {
      const link = own(event)
      if (!link) return
      event.preventDefault()
      this.go(link.pathname + link.search + link.hash)
    }
    read()
    addEventListener('popstate', read)
    document.addEventListener('click', click)
    return () => {
      removeEventListener('popstate', read)
      document.removeEventListener('click', click)
    }
  }

  go(to: string): void {
    const before = location.pathname
    history.pushState(null, '', to)
    this.current = parse(to)
    if (location.pathname === before) return
    this.turns++
    scrollTo(0, 0)
  }
}

/** The link that a plain click would follow inside these pages; a click with a modifier, a download and a file are the browser's. */
function own(event: MouseEvent): HTMLAnchorElement | undefined {
  if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return
  const link = (event.target as Element | null)?.closest('a')
  if (!link || link.target || link.hasAttribute('download') || link.origin !== location.origin) return
  if (link.pathname.startsWith('/api/') || link.getAttribute('href')?.startsWith('#')) return
  return link
}

export const router = new Router()
