// The printed formulas of a sheet, read into a tree so that they can be set as an engineer writes them.
//   C*A*sqrt(2*g*h)   t < 0 ? 0 : t   sum(zones, #.A*#.i)

export type Node =
  | { is: 'number'; text: string }
  | { is: 'name'; text: string }
  | { is: 'group'; inner: Node }
  | { is: 'sign'; op: string; of: Node }
  | { is: 'two'; op: string; left: Node; right: Node }
  | { is: 'call'; name: string; args: Node[] }
  | { is: 'choice'; when: Node; yes: Node; no: Node }

const token = /\s*(\d+\.?\d*(?:[eE][+-]?\d+)?|\.\d+(?:[eE][+-]?\d+)?|[A-Za-z_][A-Za-z0-9_]*|#\.[A-Za-z_][A-Za-z0-9_]*|#|\*\*|<=|>=|==|!=|&&|\|\||[-+*/%^()<>?:,])/y

const strength: Record<string, number> = {
  '||': 1, or: 1, '&&': 2, and: 2, '==': 3, '!=': 3, '<': 3, '>': 3, '<=': 3, '>=': 3, '+': 4, '-': 4, '*': 5, '/': 5, '%': 5, '^': 7, '**': 7,
}

/** Reads a formula, or says nothing where it is written in another way; it is then shown as it stands. */
export function read(formula: string): Node | undefined {
  const tokens = split(formula)
  if (!tokens) return undefined
  try {
    const reader = new Reader(tokens)
    const node = reader.choice()
    return reader.done ? node : undefined
  } catch {
    return undefined
  }
}

function split(formula: string): string[] | undefined {
  const tokens: string[] = []
  token.lastIndex = 0
  const text = formula.trimEnd()
  while (token.lastIndex < text.length) {
    const found = token.exec(text)
    if (!found) return undefined
    tokens.push(found[1]!)
  }
  return tokens
}

class Reader {
  #at = 0
  constructor(readonly tokens: string[]) {}

  get done(): boolean {
    return this.#at === this.tokens.length
  }

  choice(): Node {
    const when = this.#binary(0)
    if (!this.#take('?')) return when
    const yes = this.choice()
    this.#need(':')
    return { is: 'choice', when, yes, no: this.choice() }
  }

  #binary(least: number): Node {
    let left = this.#unary()
    for (;;) {
      const op = this.tokens[this.#at] ?? ''
      const power = strength[op]
      if (power === undefined || power <= least) return left
      this.#at++
      const raises = power === 7 // a power binds to the right
      left = { is: 'two', op, left, right: this.#binary(raises ? power - 1 : power) }
    }
  }

  #unary(): Node {
    for (const op of ['-', '+']) {
      if (this.#take(op)) return { is: 'sign', op, of: this.#binary(5) }
    }
    return this.#atom()
  }

  #atom(): Node {
    const text = this.tokens[this.#at++]
    if (text === '(') {
      const inner = this.choice()
      this.#need(')')
      return { is: 'group', inner }
    }
    if (text === undefined || !/^[\w.#]/.test(text)) throw new Error('not a formula of this kind')
    if (/^[\d.]/.test(text)) return { is: 'number', text }
    if (!this.#take('(')) return { is: 'name', text }
    const args: Node[] = []
    if (!this.#take(')')) {
      do args.push(this.choice())
      while (this.#take(','))
      this.#need(')')
    }
    return { is: 'call', name: text, args }
  }

  #take(text: string): boolean {
    if (this.tokens[this.#at] !== text) return false
    this.#at++
    return true
  }

  #need(text: string): void {
    if (!this.#take(text)) throw new Error(`${text} is missing`)
  }
}
