import { describe, expect, it } from 'vitest'
import { read, type Node } from './expression'
import { mathml, symbol } from './mathml'

/** The tree as a fully bracketed formula, to see what binds to what. */
function plain(n: Node): string {
  switch (n.is) {
    case 'number':
    case 'name':
      return n.text
    case 'group':
      return plain(n.inner)
    case 'sign':
      return `(${n.op}${plain(n.of)})`
    case 'two':
      return `(${plain(n.left)}${n.op}${plain(n.right)})`
    case 'call':
      return `${n.name}(${n.args.map(plain).join(',')})`
    case 'choice':
      return `(${plain(n.when)}?${plain(n.yes)}:${plain(n.no)})`
  }
}

describe('a formula is read', () => {
  it.each([
    ['a - b - c', '((a-b)-c)'],
    ['a / b * c', '((a/b)*c)'],
    ['a + b*c^2', '(a+(b*(c^2)))'],
    ['2^3^2', '(2^(3^2))'],
    ['-a^2', '(-(a^2))'],
    ['a*-b', '(a*(-b))'],
    ['a < 0 ? 0 : b > 1 ? 1 : b', '((a<0)?0:((b>1)?1:b))'],
    ['C*A*sqrt(2*g*h)', '((C*A)*sqrt(((2*g)*h)))'],
    ['sum(zones, #.A*#.i)', 'sum(zones,(#.A*#.i))'],
    ['1.5e-3*min(a, b)', '(1.5e-3*min(a,b))'],
  ])('%s', (formula, bracketed) => {
    expect(plain(read(formula)!)).toBe(bracketed)
  })

  it.each(['', 'a +', 'a b', 'a[0]', '"word"', 'f(a', 'a ? b', ')a('])('or left as it stands: %s', (formula) => {
    expect(read(formula)).toBeUndefined()
  })
})

describe('a formula is set', () => {
  it('with bars, roots and powers in place of signs', () => {
    expect(mathml(read('(a+b)/sqrt(c^2)')!)).toBe(
      '<mfrac><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow><msqrt><msup><mi>c</mi><mn>2</mn></msup></msqrt></mfrac>',
    )
  })
  it('keeps the brackets that mean something', () => {
    expect(mathml(read('(a+b)*c')!)).toContain('<mo>(</mo>')
    expect(mathml(read('(a/b)^2')!)).toContain('<mo>(</mo>')
  })
  it('writes symbols as the trade does', () => {
    expect(symbol('t_min')).toBe('<msub><mi>t</mi><mi mathvariant="normal">min</mi></msub>')
    expect(symbol('rho_w')).toBe('<msub><mi>ρ</mi><mi mathvariant="normal">w</mi></msub>')
    expect(symbol('h1')).toBe('<msub><mi>h</mi><mi mathvariant="normal">1</mi></msub>')
    expect(symbol('KM')).toBe('<mi>KM</mi>')
  })
  it('lets no markup through', () => {
    expect(mathml({ is: 'name', text: '<img>' })).not.toContain('<img')
    expect(mathml(read('a<b')!)).toContain('<mo>&lt;</mo>')
  })
})
