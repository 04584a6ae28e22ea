import { spawnSync } from 'node:child_process'
import { chmodSync, mkdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { hashed } from '../../src/api/records/rows.ts'
import type { Row, RowAnswer } from '../../src/model/scouting/index.ts'
import { startServer } from '../api/server.ts'
import { inLongForm } from '../browser/longForm.ts'
import { clusterIn, type TestDatabase } from '../engines.ts'
import { eventId, seen } from '../faults/harbourEvent.ts'
import { openEvent } from '../faults/openEvent.ts'
import { scratchFolder } from '../store/scratch.ts'

const run = (program: string, ...args: string[]) => spawnSync(program, args).status === 0

/** A small disk in memory; null where this user may not make one. @param size (MB) */
function smallDisk(size: number): string | null {
  const around = scratchFolder()
  // The database's server runs as another user.
  chmodSync(around, 0o711)
  const folder = join(around, 'disk')
  mkdirSync(folder)
  if (!run('mount', '-t', 'tmpfs', '-o', `size=${size}m`, 'tmpfs', folder)) return null
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

const mega = 1_000_000

test.runIf(inLongForm)(
  'A disk of PostgreSQL’s that is full is said, loses nothing that was acknowledged, and what was refused is taken when there is room',
  async ({ skip }) => {
    const disk = smallDisk(300)
    if (disk === null) return skip('only root can mount a small disk')
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
    for (let k = 0; k < 200 && refused.length < 20; k++) await send(batch(2))
    console.log(JSON.stringify([...new Set(answers.map((each) => JSON.stringify(each)))]))
    expect(refused).toHaveLength(20)
    for (const { status } of answers) expect([200, 503]).toContain(status)

    rmSync(ballast)
    // Where the log found no room the database's server has ended, and is started again by whoever runs it.
    const alive = async () => (await server.get('/ready')).status === 200
    console.log('alive', await alive())
    if (!(await alive())) {
      await cluster.stop()
      cluster = await clusterIn(disk, port)
      await expect.poll(alive).toBe(true)
    }
    for (const rows of refused.splice(0)) expect(await send(rows)).toBe(true)
    const kept = new Map<string, Row>()
    for (let after = 0; ; ) {
      const { records } = (await server.get(`/api/records?event=${eventId}&after=${after}`)).body
      if (records.length === 0) break
      for (const { row, arrival } of records) {
        kept.set(row.id, row)
        after = arrival
      }
    }
    expect(kept.size).toBe(acknowledged.length)
    for (const row of acknowledged) expect(hashed(kept.get(row.id)!).hash).toBe(hashed(row).hash)
  },
)
