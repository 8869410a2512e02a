// The hull in space: lines and faces, black on white, so that it reads as a drawing.
import type { Shape } from './ask'

export interface View {
  /** Turns by angles (rad) and goes closer by a factor. */
  turn: (round: number, over: number, closer: number) => void
  home: () => void
  show: (what: string, on: boolean) => void
  close: () => void
}

/** Where the eye stands: round from right ahead to port and over the horizon (rad), and how much closer than at first. */
export type Seen = (round: number, over: number, closer: number) => void

export async function draw(frame: HTMLElement, shape: Shape, seen: Seen): Promise<View> {
  const three = await import('three')
  const ink = 0x16202a
  const scene = new three.Scene()
  scene.background = new three.Color(0xffffff)
  const renderer = new three.WebGLRenderer({ antialias: true })
  frame.replaceChildren(renderer.domElement)
  const camera = new three.PerspectiveCamera(35, 1, 0.5, 2000)
  camera.up.set(0, 0, 1)
  const parts = new Map<string, InstanceType<typeof three.Object3D>>()
  const add = (name: string, object: InstanceType<typeof three.Object3D>, on = true) => {
    object.visible = on
    parts.set(name, object)
    scene.add(object)
  }

  const hull = new three.BufferGeometry()
  hull.setAttribute('position', new three.Float32BufferAttribute(shape.vertices, 3))
  hull.setIndex(shape.triangles)
  hull.computeVertexNormals()
  add('hull', new three.Mesh(hull, new three.MeshLambertMaterial({ color: 0xc9d0d6, transparent: true, opacity: 0.55, side: three.DoubleSide, depthWrite: false })))
  add('edges', new three.LineSegments(new three.EdgesGeometry(hull, 40), new three.LineBasicMaterial({ color: ink })))
  scene.add(new three.AmbientLight(0xffffff, 1.6))
  const sun = new three.DirectionalLight(0xffffff, 1.6)
  sun.position.set(30, 60, 90)
  scene.add(sun)

  const { lbp, draft_fwd: fwd, draft_aft: aft } = shape
  const water = new three.Mesh(new three.PlaneGeometry(lbp * 1.3, lbp * 0.45), new three.MeshBasicMaterial({ color: 0x8b969f, transparent: true, opacity: 0.35, side: three.DoubleSide, depthWrite: false }))
  water.position.set(lbp / 2, 0, (fwd + aft) / 2)
  water.rotation.y = Math.atan2(aft - fwd, lbp)
  add('water', water)
  const blocks = new three.Group()
  for (const x of shape.blocks) {
    const block = new three.Mesh(new three.BoxGeometry(0.9, 1.2, 1.2), new three.MeshLambertMaterial({ color: 0x6b5a45 }))
    block.position.set(x, 0, -0.62)
    blocks.add(block)
  }
  add('blocks', blocks)
  for (const s of shape.spaces) {
    const [x0 = 0, x1 = 0] = s.x
    const [z0 = 0, z1 = 0] = s.z
    const [y0 = 0, y1 = 0] = s.y[0] === s.y[1] ? [-5, 5] : s.y
    const box = new three.BoxGeometry(x1 - x0, y1 - y0, z1 - z0)
    const lines = new three.LineSegments(new three.EdgesGeometry(box), new three.LineBasicMaterial({ color: 0xa51d16 }))
    lines.position.set((x0 + x1) / 2, (y0 + y1) / 2, (z0 + z1) / 2)
    add(s.id, lines, false)
  }

  const middle = new three.Vector3(lbp / 2, 0, 3)
  let round = -1.0
  let over = 0.35
  let far = lbp * 1.25
  const paint = () => {
    const { clientWidth: w, clientHeight: h } = frame
    renderer.setPixelRatio(Math.min(devicePixelRatio, 2))
    renderer.setSize(w, h)
    camera.aspect = w / Math.max(h, 1)
    camera.updateProjectionMatrix()
    camera.position.set(middle.x + far * Math.cos(over) * Math.cos(round), far * Math.cos(over) * Math.sin(round), middle.z + far * Math.sin(over))
    camera.lookAt(middle)
    renderer.render(scene, camera)
    seen(round, over, (lbp * 1.25) / far)
  }
  const turn = (a: number, b: number, closer: number) => {
    round += a
    over = Math.min(1.5, Math.max(-1.5, over + b))
    far = Math.min(lbp * 5, Math.max(lbp * 0.2, far * closer))
    paint()
  }
  let held: { x: number; y: number } | undefined
  const down = (e: PointerEvent) => {
    held = { x: e.clientX, y: e.clientY }
    frame.setPointerCapture(e.pointerId)
  }
  const move = (e: PointerEvent) => {
    if (!held) return
    turn(-(e.clientX - held.x) / 150, (e.clientY - held.y) / 150, 1)
    held = { x: e.clientX, y: e.clientY }
  }
  const lift = () => (held = undefined)
  frame.addEventListener('pointerdown', down)
  frame.addEventListener('pointermove', move)
  frame.addEventListener('pointerup', lift)
  const sized = new ResizeObserver(paint)
  sized.observe(frame)
  paint()
  return {
    turn,
    home: () => {
      round = -1.0
      over = 0.35
      far = lbp * 1.25
      paint()
    },
    show: (what, on) => {
      const part = parts.get(what)
      if (part) part.visible = on
      paint()
    },
    close: () => {
      sized.disconnect()
      frame.removeEventListener('pointerdown', down)
      frame.removeEventListener('pointermove', move)
      frame.removeEventListener('pointerup', lift)
      renderer.dispose()
      renderer.domElement.remove()
    },
  }
}
