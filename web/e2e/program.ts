// The real program on a free port, with a ship of its own in a folder of its own.
import { spawn, type ChildProcess } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { networkInterfaces, tmpdir } from 'node:os'
import { join, resolve } from 'node:path'

export interface Program {
  address: string
  stop: () => Promise<void>
  /** What it printed until it was ready. */
  said: string
}

const binary = resolve(import.meta.dirname, '../../bin/oakum')

/** The demonstration ship, copied. With OAKUM set, the program that already runs at that address. */
export async function demo(): Promise<Program> {
  if (process.env.OAKUM) return { address: process.env.OAKUM, stop: async () => {}, said: '' }
  return start((file) => ['demo', '--keep', file, '--listen', '127.0.0.1:0'])
}

/** The demonstration ship on the evening of a day in dock. */
export function docked(day = 12): Promise<Program> {
  return start((file) => ['demo', '--in-dock', '--day', String(day), '--keep', file, '--listen', '127.0.0.1:0'])
}

/** The same, and its dock sheets open to phones at this machine's own address on its network, or at its inner one where it has no other. */
export async function yard(): Promise<Program & { yard: string }> {
  const outer = Object.values(networkInterfaces()).flat().find((a) => a && !a.internal && a.family === 'IPv4')?.address ?? '127.0.0.1'
  const program = await start((file) => ['demo', '--in-dock', '--keep', file, '--listen', '127.0.0.1:0', '--yard', '--yard-listen', `${outer}:0`])
  return { ...program, yard: /https:\/\/[\d.]+:\d+/.exec(program.said)![0] }
}

/** A new file with nothing in it. */
export function blank(): Promise<Program> {
  return start((file) => ['serve', '--new', file, '--listen', '127.0.0.1:0'])
}

async function start(args: (file: string) => string[]): Promise<Program> {
  const folder = await mkdtemp(join(tmpdir(), 'oakum-e2e-'))
  const child = spawn(binary, args(join(folder, 'ship.oakum')), { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'] })
  const stop = async () => {
    await ended(child)
    await rm(folder, { recursive: true, force: true })
  }
  try {
    const { address, said } = await addressOf(child)
    await fetch(`${address}/api/v1/brief`) // worked out once; every page asks for it
    return { address, stop, said }
  } catch (err) {
    await stop()
    throw err
  }
}

/** The address that the program prints when it is ready, and all it printed. */
function addressOf(child: ChildProcess): Promise<{ address: string; said: string }> {
  let said = ''
  return new Promise((found, failed) => {
    const listen = (chunk: Buffer) => {
      said += chunk.toString()
      const address = /http:\/\/127\.0\.0\.1:\d+/.exec(said)
      if (address) found({ address: address[0], said })
    }
    child.stdout?.on('data', listen)
    child.stderr?.on('data', listen)
    child.on('error', failed)
    child.on('exit', (code) => failed(new Error(`the program ended with ${code} before it printed its address:\n${said}`)))
  })
}

function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.pid === undefined) return Promise.resolve()
  return new Promise((done) => {
    child.on('exit', () => done())
    child.kill('SIGTERM')
  })
}
