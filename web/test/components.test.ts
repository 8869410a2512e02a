import { flushSync, mount, tick, unmount, type Component } from 'svelte'
import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Field } from '../src/api/contract'
import { Problem } from '../src/api/problem'
import FigureTable from '../src/parts/FigureTable.svelte'
import { blank } from '../src/quantity/draft'
import Form from '../src/quantity/Form.svelte'
import ConflictDialog from '../src/records/ConflictDialog.svelte'
import Sheet from '../src/sheet/Sheet.svelte'
import Drawing from '../src/ship/Drawing.svelte'
import { brief, drawing, entry, kinds, method, sheet } from './mock'

const shown: Record<string, unknown>[] = []
afterEach(() => {
  for (const one of shown.splice(0)) void unmount(one)
})

function show<Props extends Record<string, unknown>>(component: Component<Props>, props: Props): HTMLElement {
  shown.push(mount(component, { target: document.body, props }) as Record<string, unknown>)
  flushSync()
  return document.body
}

const texts = (selector: string) => [...document.querySelectorAll(selector)].map((el) => el.textContent?.replace(/\s+/g, ' ').trim() ?? '')

describe('a sheet', () => {
  it('opens with its caution, and shows how each value is known', () => {
    const body = show(Sheet, { sheet }).textContent!
    expect(body.indexOf('A surveyor decides')).toBeLessThan(body.indexOf('9.5 mm'))
    expect(body).toContain('documented, shell expansion, 1931')
    expect(body).toContain('typed as 1/2"')
    expect(body).toContain('assumed, default')
  })
  it('sets its formulas and says them plainly', () => {
    show(Sheet, { sheet })
    expect([...document.querySelectorAll('math')].map((m) => m.getAttribute('aria-label'))).toContain('t_min = t0*(1 - q)')
    expect(document.querySelectorAll('msqrt')).toHaveLength(1)
  })
  it('shows a result that is a table as a table', () => {
    show(Sheet, { sheet })
    expect(texts('caption')).toEqual(['Readings against it'])
    expect(texts('figcaption')).toEqual(['Thickness by year'])
    expect(texts('tbody th[scope=row]')).toContain('Fr 38 P')
  })
})

describe('figures', () => {
  it('never show what is unknown as a number, and say how bad in words', () => {
    show(FigureTable, { caption: 'Worst', figures: brief.front.worst })
    const rows = texts('tbody tr')
    expect(rows[0]).toContain('now')
    expect(rows[2]).toContain('unknown')
    expect(rows[2]).not.toMatch(/\b0\b/)
  })
  it('sort with what is unknown last, both ways', () => {
    show(FigureTable, { caption: 'Worst', figures: brief.front.worst })
    const byValue = [...document.querySelectorAll('thead button')].find((b) => b.textContent === 'Value') as HTMLElement
    for (const sort of ['ascending', 'descending']) {
      byValue.click()
      flushSync()
      expect(document.querySelector(`th[aria-sort=${sort}]`)).not.toBeNull()
      expect(texts('tbody tr').at(-1)).toContain('unknown')
    }
  })
  it('open the sheet that made them', () => {
    show(FigureTable, { caption: 'Worst', figures: brief.front.worst })
    expect(document.querySelector('tbody a')?.getAttribute('href')).toBe('/sheets/gland.flow%40port')
  })
})

describe('a form', () => {
  const submit = async () => {
    document.querySelector('form')!.dispatchEvent(new SubmitEvent('submit', { cancelable: true, bubbles: true }))
    await vi.waitFor(() => expect(document.querySelector('button.main')?.hasAttribute('disabled')).toBe(false))
    await tick()
  }
  const type = (id: string, value: string) => {
    const input = document.getElementById(id) as HTMLInputElement
    input.value = value
    input.dispatchEvent(new Event('input', { bubbles: true }))
    flushSync()
  }
  const form = (fields: readonly Field[], send: (body: object) => Promise<void>) =>
    show(Form as unknown as Component<Record<string, unknown>>, { fields, draft: blank(fields), send, action: 'Go' })

  it('sends nothing while something is missing, and says what', async () => {
    const send = vi.fn(async () => {})
    form(method.inputs, send)
    await submit()
    expect(send).not.toHaveBeenCalled()
    expect(texts('[role=alert] li')).toEqual(['original thickness is needed'])
    expect(document.getElementById('field-original')?.getAttribute('aria-invalid')).toBe('true')
  })
  it('sends what was typed as typed', async () => {
    const send = vi.fn(async () => {})
    form(method.inputs, send)
    type('field-original', '1/2 in')
    await submit()
    expect(send).toHaveBeenCalledWith({ original: '1/2 in' })
  })
  it('shows a refusal at its field', async () => {
    form(method.inputs, async () => {
      throw new Problem(422, { errors: [{ message: 'original must be at most 100 mm, not 500 mm', location: 'body.original' }] })
    })
    type('field-original', '500')
    await submit()
    expect(document.getElementById('field-original-wrong')?.textContent).toBe('original must be at most 100 mm, not 500 mm')
    expect(document.getElementById('field-original')?.getAttribute('aria-describedby')).toContain('field-original-wrong')
  })
  it('says the limits and what an empty entry stands for', () => {
    form(method.inputs, async () => {})
    expect(texts('.hint')).toEqual(['Nominal, from the plan. More than 0, at most 100 mm.', 'Left empty: 25-percent, marked as assumed.'])
  })
})

it('a conflict shows both versions of what differs and settles on what was chosen', () => {
  const onsettle = vi.fn()
  const thickness = kinds.find((k) => k.kind === 'thickness')!
  const mine = { ...entry.body, thickness: '8.9 mm' }
  HTMLDialogElement.prototype.showModal ??= function (this: HTMLDialogElement) {
    this.open = true
  }
  show(ConflictDialog, { fields: thickness.fields, mine, theirs: entry, onsettle, oncancel: () => {} })
  expect(texts('legend')).toEqual(['Thickness'])
  ;(document.querySelector('input[type=radio]') as HTMLInputElement).click()
  flushSync()
  ;(document.querySelector('button.main') as HTMLButtonElement).click()
  expect(onsettle).toHaveBeenCalledWith({ ...entry.body, thickness: '8.9 mm' })
})

it('the drawing lists what asks for action, and shows the chosen one in both places', async () => {
  Element.prototype.scrollIntoView ??= () => {}
  const d = drawing()
  const urgent = d.marks.filter((m) => m.worry >= 2).length
  expect(urgent).toBeGreaterThan(0)
  expect(urgent).toBeLessThan(d.marks.length)
  show(Drawing, { drawing: d })
  const buttons = document.querySelectorAll<HTMLElement>('.list li button')
  expect(buttons).toHaveLength(urgent)
  expect(buttons[0]!.textContent).toContain('Port stern gland')
  buttons[0]!.click()
  flushSync()
  await tick()
  expect(buttons[0]!.getAttribute('aria-pressed')).toBe('true')
  expect(document.querySelectorAll('g.mark.chosen')).toHaveLength(3)
})

it('the drawing of a ship on which nothing asks for action lists every mark, a screenful at first', () => {
  const d = drawing()
  show(Drawing, { drawing: { ...d, marks: d.marks.map((m) => ({ ...m, worry: 0 as const })) } })
  expect(d.marks.length).toBeGreaterThan(60)
  expect(document.querySelectorAll('.list li button')).toHaveLength(60)
})
