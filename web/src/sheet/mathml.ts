// A formula's tree as MathML, which every current browser sets by itself.
import { text } from '../text'
import type { Node } from './expression'

const greek: Record<string, string> = {
  alpha: 'α', beta: 'β', gamma: 'γ', delta: 'δ', epsilon: 'ε', zeta: 'ζ', eta: 'η', theta: 'θ', kappa: 'κ', lambda: 'λ', mu: 'μ', nu: 'ν', xi: 'ξ',
  pi: 'π', rho: 'ρ', sigma: 'σ', tau: 'τ', phi: 'φ', chi: 'χ', psi: 'ψ', omega: 'ω', Delta: 'Δ', Gamma: 'Γ', Sigma: 'Σ', Phi: 'Φ', Omega: 'Ω', nabla: '∇',
}

const signs: Record<string, string> = {
  '*': '·', '-': '−', '<=': '≤', '>=': '≥', '==': '=', '!=': '≠', '&&': 'and', '||': 'or', '%': 'mod',
}

export function mathml(node: Node): string {
  switch (node.is) {
    case 'number':
      return number(node.text)
    case 'name':
      return symbol(node.text)
    case 'group':
      return `<mrow><mo>(</mo>${mathml(node.inner)}<mo>)</mo></mrow>`
    case 'sign':
      return `<mrow>${operator(node.op)}${mathml(node.of)}</mrow>`
    case 'two':
      return two(node.op, node.left, node.right)
    case 'call':
      return call(node.name, node.args)
    case 'choice':
      return choice(node.when, node.yes, node.no)
  }
}

/** A symbol of the trade: t_min gets its index, rho its letter, h1 its number low. */
export function symbol(name: string): string {
  const [, head = name, low = ''] = /^#?\.?([A-Za-z]+)_?(\w*)$/.exec(name) ?? []
  const base = `<mi>${greek[head] ?? escape(head)}</mi>`
  return low ? `<msub>${base}<mi mathvariant="normal">${escape(low.replaceAll('_', ' '))}</mi></msub>` : base
}

function two(op: string, left: Node, right: Node): string {
  if (op === '/') return `<mfrac>${mathml(bare(left))}${mathml(bare(right))}</mfrac>`
  if (op === '^' || op === '**') return `<msup>${mathml(left)}${mathml(bare(right))}</msup>`
  return `<mrow>${mathml(left)}${operator(op)}${mathml(right)}</mrow>`
}

function call(name: string, args: Node[]): string {
  const [first, second] = args
  if (first && args.length === 1) {
    if (name === 'sqrt') return `<msqrt>${mathml(bare(first))}</msqrt>`
    if (name === 'abs') return `<mrow><mo>|</mo>${mathml(bare(first))}<mo>|</mo></mrow>`
    if (name === 'exp') return `<msup><mi mathvariant="normal">e</mi>${mathml(bare(first))}</msup>`
  }
  if (name === 'sum' && first && second) {
    return `<mrow><munder><mo>∑</mo>${mathml(first)}</munder>${mathml(second)}</mrow>`
  }
  const list = args.map((arg) => mathml(bare(arg))).join('<mo separator="true">,</mo>')
  return `<mrow><mi mathvariant="normal">${escape(name)}</mi><mo>(</mo>${list}<mo>)</mo></mrow>`
}

function choice(when: Node, yes: Node, no: Node): string {
  const row = (value: Node, word: string) => `<mtr><mtd>${mathml(value)}</mtd><mtd>${word}</mtd></mtr>`
  return `<mrow><mo>{</mo><mtable>${row(yes, `<mrow><mtext>${text.sheet.when} </mtext>${mathml(when)}</mrow>`)}${row(no, `<mtext>${text.sheet.otherwise}</mtext>`)}</mtable></mrow>`
}

/** Without the brackets that a fraction bar, a root or a call makes needless. */
function bare(node: Node): Node {
  return node.is === 'group' ? node.inner : node
}

function number(written: string): string {
  const [mantissa = written, power] = written.split(/[eE]/)
  if (power === undefined) return `<mn>${escape(written)}</mn>`
  const ten = `<msup><mn>10</mn><mn>${escape(power.replace(/^\+/, '').replace('-', '−'))}</mn></msup>`
  return `<mrow><mn>${escape(mantissa)}</mn><mo>·</mo>${ten}</mrow>`
}

function operator(op: string): string {
  return `<mo>${escape(signs[op] ?? op)}</mo>`
}

function escape(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
}
