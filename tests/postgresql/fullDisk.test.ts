import { spawnSync } from 'node:child_process'
import { chmodSync, mkdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { join } from 'node:path'
import pg from 'pg'
import { describe, expect, onTestFinished, test } from 'vitest'
import { hashed } from '../../src/api/records/rows.ts'
import type { Row, RowAnswer } from '../../src/model/scouting/index.ts'
import { startServer } from '../api/server.ts'
import { inLongForm } from '../browser/longForm.ts'
import { clusterIn, type TestDatabase } from '../engines.ts'
import { seen } from '../faults/harbourEvent.ts'
import { openEvent, rowsShown } from '../faults/openEvent.ts'
import { harbour } from '../model/documents/harbour.ts'
import { scratchFolder } from '../store/scratch.ts'

const run = (program: string, ...args: string[]) => spawnSync(program, args).status === 0

/** A small disk in memory. @param size (MB) */
function smallDisk(size: number): string {
  const around = scratchFolder()
  // The database's server runs as another user.
  chmodSync(around, 0o711)
  const folder = join(around, 'disk')
  mkdirSync(folder)
  if (!run('mount', '-t', 'tmpfs', '-o', `size=${size}m`, 'tmpfs', folder)) throw new Error('no disk could be mounted')
  onTestFinished(() => void run('umount', '--lazy', folder))
  return folder
}

const freePort = () =>
  new Promise<number>((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number }
      server.close(() => resolve(port))
    })
  })

/** Whether the log took a megabyte more. */
async function growsLog(url: string): Promise<boolean> {
  const client = new pg.Client({ connectionString: url })
  client.on('error', () => {})
  try {
    await client.connect()
    await client.query("SELECT pg_logical_emit_message(true, 'ballast', repeat('x', 1000000))")
    return true
  } catch {
    return false
  } finally {
    await client.end().catch(() => {})
  }
}

const mega = 1_000_000

/** Where room is missing first. */
const wheres = ['data', 'log'] as const

/** Only root can mount a small disk. */
const able = inLongForm && process.getuid?.() === 0

describe.runIf(able)(
  'A full disk of PostgreSQL’s is said, loses nothing that was acknowledged, and what was refused is taken when there is room:',
  () => {
    test.each(wheres)('%s', async (where) => {
      const disk = smallDisk(300)
      const port = await freePort()
      let cluster = await clusterIn(disk, port)
      onTestFinished(() => cluster.stop())
      const server = await startServer({ on: { url: cluster.url } as TestDatabase, pool: { threads: 1 } })
      onTestFinished(() => server.close())
      await openEvent(server.url)

      const refused: Row[][] = []
      const acknowledged: Row[] = []
      const answers: { status: number; code: string | undefined; message: string | undefined }[] = []
      const send = async (rows: Row[]) => {
        const sent = { device: rows[0]!.device, unsent: 0, rows }
        const { status, body, headers } = await server.send('POST', '/api/records', sent)
        answers.push({ status, code: body.error?.code, message: body.error?.message })
        if (status !== 200) {
          expect(headers.get('retry-after'), JSON.stringify(body)).not.toBeNull()
          refused.push(rows)
          return false
        }
        const held = rows.filter((_, index) => (body.answers as RowAnswer[])[index]?.outcome === 'held')
        expect(held).toHaveLength(rows.length)
        acknowledged.push(...rows)
        return true
      }
      let sequence = 0
      const batch = (device: number) => Array.from({ length: 100 }, () => seen(device, sequence++))
      for (let k = 0; k < 5; k++) await send(batch(1))
      expect(acknowledged).toHaveLength(500)

      // Others fill the disk but for some megabytes.
      const ballast = join(disk, 'ballast')
      const { bavail, bsize } = statfsSync(disk)
      writeFileSync(ballast, Buffer.alloc(bavail * bsize - 4 * mega))
      for (let k = 0; k < 200 && refused.length < 5; k++) await send(batch(2))
      // A log that can not be written ends the database's server, as it does by itself when its last piece is full.
      if (where === 'log') for (let k = 0; k < 40 && (await growsLog(cluster.url)); k++);
      for (let k = 0; k < 200 && refused.length < 20; k++) await send(batch(2))
      const document = await server.send('PUT', '/api/documents/game/other', {
        base: null,
        body: { ...harbour(), id: 'other' },
      })
      expect(refused).toHaveLength(20)
      expect([...new Set(answers.map(({ code }) => code))].toSorted()).toEqual(
        where === 'log' ? ['noDatabase', 'storageFull', undefined] : ['storageFull', undefined],
      )
      for (const { status, message = '' } of answers)
        if (status !== 200) expect([status, message.length > 40]).toEqual([503, true])
      if (document.status !== 200) expect(document.status, JSON.stringify(document.body)).toBe(503)

      rmSync(ballast)
      // Where the log found no room the database's server has ended, and is started again by whoever runs it.
      const alive = async () => (await server.get('/ready')).status === 200
      expect(await alive()).toBe(where === 'data')
      if (where === 'log') {
        await cluster.stop()
        cluster = await clusterIn(disk, port)
        await expect.poll(alive).toBe(true)
      }
      for (const rows of refused.splice(0)) expect(await send(rows)).toBe(true)
      const kept = await rowsShown(server.url)
      expect(kept.size).toBe(acknowledged.length)
      for (const row of acknowledged) expect(hashed(kept.get(row.id)!).hash).toBe(hashed(row).hash)
    })
  },
)
