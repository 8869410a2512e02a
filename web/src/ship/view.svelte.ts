import type { Point } from '../api/contract'
import type { Box } from './picture'

const closest = 60 // times closer than the whole ship
const margin = 1.08

/** What part of a picture is seen: the middle of the window and how many metres one pixel covers. */
export class View {
  cx = $state(0)
  cy = $state(0)
  /** Metres a pixel. */
  u = $state(1)
  width = $state(1)
  height = $state(1)
  #content: Box = { x: 0, y: 0, w: 1, h: 1 }

  get box(): Box {
    const w = this.u * this.width
    const h = this.u * this.height
    return { x: this.cx - w / 2, y: this.cy - h / 2, w, h }
  }

  /** Whether the whole picture is seen. */
  get whole(): boolean {
    return this.u >= this.#fit * 0.999
  }

  get #fit(): number {
    return Math.max(this.#content.w / this.width, this.#content.h / this.height) * margin
  }

  /** Shows the whole of a picture in a window of so many pixels. */
  show(content: Box, width: number, height: number): void {
    this.#content = content
    this.width = Math.max(1, width)
    this.height = Math.max(1, height)
    this.all()
  }

  all(): void {
    this.u = this.#fit
    this.cx = this.#content.x + this.#content.w / 2
    this.cy = this.#content.y + this.#content.h / 2
  }

  /** Goes closer by a factor, keeping what is under a pixel under it; without one, the middle. */
  closer(factor: number, px = this.width / 2, py = this.height / 2): void {
    const before = this.at(px, py)
    this.u = Math.min(this.#fit, Math.max(this.#fit / closest, this.u / factor))
    const after = this.at(px, py)
    this.cx += before[0] - after[0]
    this.cy += before[1] - after[1]
    this.#keep()
  }

  /** Moves the paper by so many pixels. */
  move(dx: number, dy: number): void {
    this.cx -= dx * this.u
    this.cy -= dy * this.u
    this.#keep()
  }

  /** Brings a point into the window, moving only if it is outside. */
  bring([x, y]: Point): void {
    const { x: left, y: top, w, h } = this.box
    if (x < left || x > left + w) this.cx = x
    if (y < top || y > top + h) this.cy = y
    this.#keep()
  }

  /** The place on the paper under a pixel of the window. */
  at(px: number, py: number): Point {
    return [this.cx + (px - this.width / 2) * this.u, this.cy + (py - this.height / 2) * this.u]
  }

  /** Does what a key asks, and says whether it asked anything. */
  key(key: string): boolean {
    const stride = 60
    const does: Record<string, () => void> = {
      ArrowLeft: () => this.move(stride, 0),
      ArrowRight: () => this.move(-stride, 0),
      ArrowUp: () => this.move(0, stride),
      ArrowDown: () => this.move(0, -stride),
      '+': () => this.closer(1.4),
      '=': () => this.closer(1.4),
      '-': () => this.closer(1 / 1.4),
      '0': () => this.all(),
    }
    does[key]?.()
    return key in does
  }

  /** The middle of the window stays on the picture. */
  #keep(): void {
    const { x, y, w, h } = this.#content
    this.cx = Math.min(x + w, Math.max(x, this.cx))
    this.cy = Math.min(y + h, Math.max(y, this.cy))
    if (this.whole) this.all()
  }
}
