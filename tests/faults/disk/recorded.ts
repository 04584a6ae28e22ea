import { spawnSync } from 'node:child_process'
import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { projectRoot } from '../../../src/root.ts'

const kinds = ['', 'write', 'sync', 'truncate', 'remove'] as const

/** What a program did to one of its files. */
interface Entry {
  kind: (typeof kinds)[number]
  name: string
  offset: number
  bytes: Buffer
  /** Where the entry ends in the log. */
  end: number
}

/** Compiles what writes the log; null where there is no compiler. */
export function recorder(folder: string): string | null {
  const library = join(folder, 'disk.so')
  const source = join(projectRoot(), 'tests', 'faults', 'disk', 'disk.c')
  const { status } = spawnSync('cc', ['-O1', '-shared', '-fPIC', '-o', library, source, '-ldl', '-lpthread'])
  return status === 0 ? library : null
}

/** The settings by which a process is written down. */
export const recording = (library: string, of: { log: string; prefix: string }) => ({
  LD_PRELOAD: library,
  DISK_LOG: of.log,
  DISK_PREFIX: of.prefix,
})

export function readLog(log: string): Entry[] {
  const all = readFileSync(log)
  const entries: Entry[] = []
  for (let at = 0; at + 24 <= all.length; ) {
    const kind = kinds[all.readUInt32LE(at)]!
    const [name, offset, length] = [all.readUInt32LE(at + 4), all.readBigUInt64LE(at + 8), all.readBigUInt64LE(at + 16)]
    const from = at + 24 + name
    const end = from + (kind === 'write' ? Number(length) : 0)
    // Killed while it was written.
    if (end > all.length) break
    const bytes = all.subarray(from, end)
    entries.push({ kind, name: all.toString('utf8', at + 24, from), offset: Number(offset), bytes, end })
    at = end
  }
  return entries
}

/** What a disk may keep of a write that nobody waited for: each part of this size, or not (bytes). */
const sector = 512

class File {
  /** As it surely is on the disk: with all that was written before the last sync. */
  #kept: Buffer
  #since: Entry[] = []

  constructor(kept: Buffer) {
    this.#kept = kept
  }

  take(entry: Entry): void {
    if (entry.kind !== 'sync') {
      this.#since.push(entry)
      return
    }
    this.#kept = this.after(() => true) ?? Buffer.alloc(0)
    this.#since = []
  }

  /** With those parts of what was done since that `stays` says; null: it is gone. */
  after(stays: () => boolean): Buffer | null {
    let now: Buffer | null = Buffer.from(this.#kept)
    for (const { kind, offset, bytes } of this.#since) {
      if (kind === 'remove') now = stays() ? null : now
      else if (kind === 'truncate') now = stays() ? resized(now, offset) : now
      else now = written(now, { offset, bytes, stays })
    }
    return now
  }
}

const resized = (of: Buffer | null, length: number): Buffer =>
  Buffer.concat([(of ?? Buffer.alloc(0)).subarray(0, length)], length)

function written(
  of: Buffer | null,
  { offset, bytes, stays }: { offset: number; bytes: Buffer; stays: () => boolean },
): Buffer {
  const parts: [number, number][] = []
  for (let at = 0; at < bytes.length; ) {
    // Sectors are the disk's, wherever the write begins.
    const end = Math.min(bytes.length, at + sector - ((offset + at) % sector))
    if (stays()) parts.push([at, end])
    at = end
  }
  let now = of ?? Buffer.alloc(0)
  const length = offset + (parts.at(-1)?.[1] ?? 0)
  if (parts.length > 0 && now.length < length) now = resized(now, length)
  for (const [from, to] of parts) bytes.copy(now, offset + from, from, to)
  return now
}

/** Files by name, of which those that name no database's contents (its index in shared memory) are left out. */
const isKept = (name: string) => !name.endsWith('-shm')

/**
 * The states in which a power cut may leave the files: after the entry that `cuts` names, everything up to each file's last sync is there, and of
 * what was written since any parts. @param heeded false: as a disk that answers a sync without doing it
 */
export function* statesAfter(
  entries: readonly Entry[],
  {
    cuts,
    start,
    random,
    heeded = true,
  }: { cuts: readonly number[]; start: ReadonlyMap<string, Buffer>; random: () => number; heeded?: boolean },
): Generator<{ cut: number; end: number; files: Map<string, Buffer> }> {
  const files = new Map([...start].map(([name, bytes]) => [name, new File(bytes)]))
  const wanted = new Set(cuts)
  for (const [index, entry] of entries.entries()) {
    if (isKept(entry.name) && (heeded || entry.kind !== 'sync')) {
      const file = files.get(entry.name) ?? new File(Buffer.alloc(0))
      files.set(entry.name, file)
      file.take(entry)
    }
    if (!wanted.has(index)) continue
    // Sometimes nearly all of it had arrived, sometimes nearly nothing.
    const share = random()
    const left = new Map<string, Buffer>()
    for (const [name, file] of files) {
      const bytes = file.after(() => random() < share)
      if (bytes !== null) left.set(name, bytes)
    }
    yield { cut: index, end: entry.end, files: left }
  }
}

/** Puts a state where a database can be opened; what lay there goes. */
export function putBack(files: ReadonlyMap<string, Buffer>, { from, to }: { from: string; to: string }): void {
  for (const suffix of ['', '-wal', '-shm', '-journal']) rmSync(`${to}${suffix}`, { force: true })
  for (const [name, bytes] of files) writeFileSync(name.replace(from, to), bytes)
}
