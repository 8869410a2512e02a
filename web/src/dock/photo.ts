// A photograph as it was taken, with its fingerprint, and a copy small enough for a sheet. Its size is read from its head before it is opened:
// a picture too large for the phone would end the page.
import { say } from './words'

export interface Shot {
  name: string
  sha256: string
  data: Blob
  small: Blob
  smallSHA256: string
  width: number
  height: number
}

const mostPixels = 100_000_000
const mostBytes = 60 * 2 ** 20
const sheetSide = 1600 // pixels: 150 mm on paper at 270 dots an inch

export async function look(file: File): Promise<Shot> {
  if (file.size > mostBytes) throw new Error(say.tooHeavy(file.name))
  const size = sizeOf(new DataView(await file.slice(0, 2 ** 20).arrayBuffer()))
  if (!size) throw new Error(say.notPicture(file.name))
  if (size[0] * size[1] > mostPixels) throw new Error(say.tooBig(file.name, Math.round((size[0] * size[1]) / 1e6)))
  const small = await sized(file).catch(() => {
    throw new Error(say.broken(file.name))
  })
  const data = new Blob([await file.arrayBuffer()], { type: file.type })
  return { name: file.name, sha256: await fingerprint(data), data, small, smallSHA256: await fingerprint(small), width: size[0], height: size[1] }
}

export async function fingerprint(data: Blob): Promise<string> {
  const sum = await crypto.subtle.digest('SHA-256', await data.arrayBuffer())
  return [...new Uint8Array(sum)].map((b) => b.toString(16).padStart(2, '0')).join('')
}

/** Width and height of a JPEG or PNG from its head; nothing for any other file. */
export function sizeOf(head: DataView): [number, number] | undefined {
  if (head.byteLength > 24 && head.getUint32(0) === 0x89504e47 && head.getUint32(12) === 0x49484452) return [head.getUint32(16), head.getUint32(20)]
  if (head.byteLength < 4 || head.getUint16(0) !== 0xffd8) return undefined
  let at = 2
  while (at + 9 < head.byteLength) {
    if (head.getUint8(at) !== 0xff) return undefined
    const mark = head.getUint8(at + 1)
    if (mark === 0xff) {
      at++ // filler before a mark
      continue
    }
    if (mark >= 0xc0 && mark <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(mark)) return [head.getUint16(at + 7), head.getUint16(at + 5)]
    at += 2 + head.getUint16(at + 2)
  }
  return undefined
}

async function sized(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
  const by = Math.min(1, sheetSide / Math.max(picture.width, picture.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(picture.width * by))
  canvas.height = Math.max(1, Math.round(picture.height * by))
  canvas.getContext('2d')!.drawImage(picture, 0, 0, canvas.width, canvas.height)
  picture.close()
  return new Promise((found, failed) => canvas.toBlob((b) => (b ? found(b) : failed(new Error('no picture'))), 'image/jpeg', 0.82))
}
