import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { address, parse, router } from './route.svelte'

describe('an address', () => {
  it('says its parts as people wrote them', () => {
    expect(parse('/sheets/plating.rate%40C%2037%C2%BD?day=2026-05-01')).toMatchObject({ parts: ['sheets', 'plating.rate@C 37½'] })
    expect(parse('/').parts).toEqual([])
  })
  it('comes back whole from what it was made of', () => {
    const parts = ['records', 'thickness', 'a/b ½%']
    expect(parse(address(parts, '2026-05-01'))).toMatchObject({ parts })
    expect(parse(address(parts, '2026-05-01')).query.get('day')).toBe('2026-05-01')
  })
  it('survives a broken escape', () => {
    expect(parse('/records/%E0%A4%A').parts).toEqual(['records', '%E0%A4%A'])
  })
})

describe('a click', () => {
  let stop = () => {}
  beforeEach(() => {
    history.replaceState(null, '', '/')
    stop = router.start()
  })
  afterEach(() => stop())

  function click(html: string, init: MouseEventInit = {}): boolean {
    document.body.innerHTML = html
    const event = new MouseEvent('click', { bubbles: true, cancelable: true, button: 0, ...init })
    document.querySelector('a')!.dispatchEvent(event)
    return event.defaultPrevented
  }

  it('on a link of ours turns the page', () => {
    expect(click('<a href="/standing?day=2026-05-01"><b>Standing</b></a>')).toBe(true)
    expect(router.current.parts).toEqual(['standing'])
    expect(location.pathname).toBe('/standing')
  })
  it.each([
    ['a file to save', '<a href="/x.csv" download>x</a>', {}],
    ['data', '<a href="/api/v1/ship">x</a>', {}],
    ['a new tab', '<a href="/money">x</a>', { ctrlKey: true }],
    ['a place in the page', '<a href="#main">x</a>', {}],
  ])('on %s is left to the browser', (_, html, init) => {
    expect(click(html, init)).toBe(false)
  })
})
