// One line of news for the reader, said aloud by a screen reader and shown at the foot, with the undo of what was just done.

interface News {
  text: string
  undo?: () => Promise<void>
}

class Board {
  last = $state.raw<News | undefined>()

  say(text: string, undo?: () => Promise<void>): void {
    this.last = undo ? { text, undo } : { text }
  }

  clear(): void {
    this.last = undefined
  }
}

export const news = new Board()
