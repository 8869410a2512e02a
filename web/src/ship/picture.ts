// Her drawing as lines on paper: metres, x to the right (forward), y down. One picture a view; PictureView draws any of them.
import type { Drawing, Mark, Point } from '../api/contract'
import { text } from '../text'
import { frameSpacing } from './marks'

export interface Box {
  x: number
  y: number
  w: number
  h: number
}

export interface Line {
  points: Point[]
  /** heavy is her outline, plain a line of hers, faint a line to read by, water the water she floats in. */
  weight: 'heavy' | 'plain' | 'faint' | 'water'
  /** Metres between lines of its sort; it is left out while they would run into each other. */
  apart?: number
}

/** Water, as a line at which she floats. */
type Water = NonNullable<Drawing['water']>

export interface Label {
  at: Point
  text: string
  /** Which end of the text stands at the point. */
  anchor: 'start' | 'middle' | 'end'
  /** Metres there are for it; a text that is longer is left out. */
  room?: number
}

export interface Picture {
  name: ViewName
  content: Box
  lines: Line[]
  labels: Label[]
  /** Frames along the foot, where x runs along the ship. */
  frames: Drawing['frames']
  /** Where a mark stands on the paper: on each side it is on, in each view of the whole sheet; nowhere while its place is not known. */
  places: (mark: Mark) => Point[]
}

export const views = ['sheet', 'profile', 'plan', 'sections', 'shell'] as const
export type ViewName = (typeof views)[number]

export function picture(name: ViewName, d: Drawing): Picture {
  if (name === 'sheet') return sheet(d)
  return single(name, d)
}

function single(name: Exclude<ViewName, 'sheet'>, d: Drawing): Picture {
  const drawn = { profile, plan, sections, shell }[name](d)
  return { ...drawn, name, content: around(drawn.lines) }
}

/** The views that run along the ship, under each other on one sheet, over one scale of frames. */
function sheet(d: Drawing): Picture {
  const gap = d.particulars.length / 30
  const stacked: Picture[] = []
  let foot = 0
  for (const name of ['profile', 'plan', 'shell'] as const) {
    const one = single(name, d)
    if (flat(one)) continue
    const down = foot - one.content.y + (stacked.length ? gap : 0)
    stacked.push(lower(one, down))
    foot = one.content.y + one.content.h + down
  }
  const lines = stacked.flatMap((p) => p.lines)
  return {
    name: 'sheet', lines, content: around(lines), labels: stacked.flatMap((p) => p.labels), frames: d.frames,
    places: (m) => stacked.flatMap((p) => p.places(m)),
  }
}

function lower(p: Picture, by: number): Picture {
  const moved = ([x, y]: Point): Point => [x, y + by]
  return {
    ...p,
    lines: p.lines.map((l) => ({ ...l, points: l.points.map(moved) })),
    labels: p.labels.map((l) => ({ ...l, at: moved(l.at) })),
    places: (m) => p.places(m).map(moved),
  }
}

/** The views of which something is known. */
export function known(d: Drawing): ViewName[] {
  return views.filter((name) => !flat(picture(name, d)))
}

/** A view of which nothing is known is a line without height, or nothing. */
function flat(p: Picture): boolean {
  const [low, high] = extent(p.lines.flatMap((l) => l.points), 1)
  return low === high
}

/** Whether her lines are known at all. */
export function hasForm(d: Drawing): boolean {
  return d.profile.outline.length > 2
}

type Drawn = Omit<Picture, 'name' | 'content'>

function profile(d: Drawing): Drawn {
  const up = ([x, z]: Point): Point => [x, -z]
  const ends = extent(d.profile.outline, 0)
  const waterlines = d.profile.waterlines.filter((w) => w.z <= d.particulars.depth).map((w) => w.points ?? ([[ends[0], w.z], [ends[1], w.z]] as Point[]))
  return {
    lines: [
      ...waterlines.map((points): Line => ({ points: points.map(up), weight: 'faint' })),
      ...d.spaces.filter((s) => s.z[0] < d.particulars.depth).map((s): Line => ({ points: box(s.x, s.z).map(up), weight: 'faint' })),
      ...gear(d, 'profile').map((points): Line => ({ points: points.map(up), weight: 'plain' })),
      { points: closed(d.profile.outline).map(up), weight: 'heavy' },
      { points: d.profile.deck.map(up), weight: 'plain' },
      ...(d.water ? [{ points: surface(d, d.water).map(up), weight: 'water' as const }] : []),
    ],
    labels: [
      ...d.profile.waterlines.flatMap((w) => (w.label ? [{ at: [ends[1], -w.z] as Point, text: w.label, anchor: 'end' as const }] : [])),
      ...d.spaces.map((s): Label => ({ at: [middle(s.x), -middle(s.z)], text: s.name, anchor: 'middle', room: s.x[1] - s.x[0] })),
    ],
    frames: d.frames,
    places: (m) => (m.z === undefined ? [] : [[m.x, -m.z]]),
  }
}

/** Shafts, screws, rudder and what stands above the deck, as one view shows them. */
function gear(d: Drawing, view: 'profile' | 'plan' | 'sections'): Point[][] {
  return d.gear.flatMap((g) => g[view] ?? [])
}

/** The water from a little abaft her to a little ahead, as high at each end as the marks told. */
function surface(d: Drawing, w: Water): Point[] {
  const [aft, fore] = [d.particulars.aft, d.particulars.fore]
  const beyond = (fore - aft) / 40
  const at = (x: number): Point => [x, w.aft + ((w.fore - w.aft) * x) / d.particulars.length]
  return [at(aft - beyond), at(fore + beyond)]
}

/** Her hull alone, for a strip that leaves room for what the page says: nothing above the deck. */
export function hullOnly(d: Drawing): Drawing {
  return { ...d, gear: d.gear.filter((g) => g.kind !== 'outline' || !above(d, g.profile?.[0] ?? [])) }
}

function above(d: Drawing, line: Point[]): boolean {
  return line.some(([, z]) => z > d.particulars.depth)
}

/** Seen from above with the bow to the right, port is up. */
function plan(d: Drawing): Drawn {
  const port = ([x, y]: Point): Point => [x, -Math.abs(y)]
  const starboard = ([x, y]: Point): Point => [x, Math.abs(y)]
  const both = (points: Point[], weight: Line['weight']): Line[] => [
    { points: points.map(port), weight },
    { points: points.map(starboard), weight },
  ]
  const ends = extent(d.plan.outline, 0)
  return {
    lines: [
      { points: [[ends[0], 0], [ends[1], 0]], weight: 'faint' },
      ...d.plan.waterlines.flatMap((w) => both(w.points ?? [], 'faint')),
      ...gear(d, 'plan').map((points): Line => ({ points: points.map(([x, y]) => [x, -y]), weight: 'plain' })),
      ...both(d.plan.outline, 'heavy'),
    ],
    labels: sides(d.plan.outline, ends[0]),
    frames: d.frames,
    places: (m) => across(m, m.y),
  }
}

/** The body plan: after sections on the left, forward ones on the right. */
function sections(d: Drawing): Drawn {
  const amidships = d.particulars.length / 2
  const way = (x: number) => (x < amidships ? -1 : 1)
  const lines = d.sections.map(({ x, points }): Line => ({ points: points.map(([y, z]) => [way(x) * Math.abs(y), -z]), weight: 'plain' }))
  const half = Math.max(d.particulars.beam / 2, ...d.sections.flatMap((s) => s.points.map(([y]) => Math.abs(y))))
  const top = Math.max(d.particulars.depth, ...d.sections.flatMap((s) => s.points.map(([, z]) => z)))
  return {
    lines: [
      { points: [[0, 0], [0, -top]], weight: 'faint' },
      { points: [[-half, 0], [half, 0]], weight: 'faint' },
      ...lines,
      ...gear(d, 'sections').filter((points) => points.every(([y]) => y >= 0)).map((points): Line => ({ points: points.map(([y, z]) => [-y, -z]), weight: 'plain' })),
    ],
    labels: [
      { at: [-half, 0], text: text.drawing.aft, anchor: 'start' },
      { at: [half, 0], text: text.drawing.fore, anchor: 'end' },
    ],
    frames: [],
    places: (m) => (m.y === undefined || m.z === undefined ? [] : [[way(m.x) * Math.abs(m.y), -m.z]]),
  }
}

/** The shell opened out from the keel: port above, starboard below. */
function shell(d: Drawing): Drawn {
  const signs = [-1, 1]
  const out = (points: Point[], sign: number): Point[] => points.map(([x, g]) => [x, sign * g])
  const both = (points: Point[], weight: Line['weight']): Line[] => signs.map((sign) => ({ points: out(points, sign), weight }))
  const edges = d.strakes.flatMap((s) => [s.lower, s.upper].filter((edge) => edge.length > 1))
  const all = [...d.shell.edge, ...edges.flat()]
  const ends = extent(all, 0)
  const frames: Line[] = d.frames
    .filter((f) => f.x >= ends[0] && f.x <= ends[1])
    .map((f) => ({ points: signs.map((sign): Point => [f.x, sign * reach(d, f.x)]), weight: 'faint', apart: apart(d, f.label) }))
  return {
    lines: [
      ...frames,
      ...d.shell.lines.flatMap((l) => both(l.points ?? [], 'faint')),
      ...edges.flatMap((edge) => both(edge, 'plain')),
      ...both(d.shell.edge, 'heavy'),
      { points: [[ends[0], 0], [ends[1], 0]], weight: 'heavy' },
    ],
    labels: [
      ...signs.flatMap((sign) => d.strakes.filter((s) => s.lower.length > 0 && s.upper.length > 0).map((s) => strakeLabel(s, sign))),
      ...sides(all, ends[1], 'end'),
    ],
    frames: d.frames,
    places: (m) => across(m, m.girth),
  }
}

/** Where a mark stands in a view that shows both sides, so far from the middle line; a thing on both sides stands twice. */
function across(m: Mark, out: number | undefined): Point[] {
  const y = Math.abs(out ?? 0)
  const at: Record<string, Point[]> = { P: [[m.x, -y]], S: [[m.x, y]], B: [[m.x, -y], [m.x, y]] }
  if (out === undefined && m.side !== 'C') return []
  return at[m.side] ?? [[m.x, 0]]
}

/** Every tenth frame and every fifth stand further apart than the others, and are drawn while those are not. */
function apart(d: Drawing, label: string): number {
  return frameSpacing(d.frames) * ([10, 5].find((n) => Number(label) % n === 0) ?? 1)
}

/** The name of a strake stands before its after end, between its edges. */
function strakeLabel(s: Drawing['strakes'][number], sign: number): Label {
  const [lower, upper] = [s.lower[0]!, s.upper[0]!]
  return { at: [Math.min(lower[0], upper[0]), (sign * (lower[1] + upper[1])) / 2], text: `${s.name} `, anchor: 'end' }
}

function reach(d: Drawing, x: number): number {
  return Math.max(along(d.shell.edge, x), ...d.strakes.map((s) => along(s.upper, x)))
}

/** The value of a line at x, straight between its points, nothing outside them. */
export function along(line: Point[], x: number): number {
  const after = line.findIndex(([at]) => at >= x)
  if (after < 0 || (after === 0 && line[0]![0] > x)) return 0
  const [x1, y1] = line[after]!
  if (after === 0 || x1 === x) return y1
  const [x0, y0] = line[after - 1]!
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0)
}

function sides(points: Point[], x: number, anchor: Label['anchor'] = 'start'): Label[] {
  const out = Math.max(0, ...points.map(([, y]) => Math.abs(y)))
  return [
    { at: [x, -out], text: text.drawing.port, anchor },
    { at: [x, out], text: text.drawing.starboard, anchor },
  ]
}

function box(x: Point, z: Point): Point[] {
  return [[x[0], z[0]], [x[1], z[0]], [x[1], z[1]], [x[0], z[1]], [x[0], z[0]]]
}

function middle([low, high]: Point): number {
  return (low + high) / 2
}

function closed(points: Point[]): Point[] {
  return points.length > 2 ? [...points, points[0]!] : points
}

function extent(points: Point[], axis: 0 | 1): [number, number] {
  if (points.length === 0) return [0, 0]
  let [low, high] = [Infinity, -Infinity]
  for (const p of points) {
    low = Math.min(low, p[axis])
    high = Math.max(high, p[axis])
  }
  return [low, high]
}

function around(lines: Line[]): Box {
  const points = lines.flatMap((l) => l.points)
  const [x0, x1] = extent(points, 0)
  const [y0, y1] = extent(points, 1)
  return { x: x0, y: y0, w: x1 - x0 || 1, h: y1 - y0 || 1 }
}
