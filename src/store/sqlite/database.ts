import { stat } from 'node:fs/promises'
import { FileBackups } from '../backups/backups.ts'
import type { Database } from '../database.ts'
import { StoreError } from '../errors.ts'
import { PrismaClient } from '../generated/client.ts'
import { OwnSignals } from '../signals.ts'
import type { StoreHealth } from '../types.ts'
import { SqliteFactory } from './factory.ts'
import { takeInOn } from './intake.ts'
import type { Setting } from './pragmas.ts'

const synchronousModes = ['OFF', 'NORMAL', 'FULL', 'EXTRA']

/** A database file, which one process uses. All transactions run one after the other, so that there is one turn for all of them. */
export async function openSqlite(
  file: string,
  { further, now }: { further: string | undefined; now: () => Date },
): Promise<Database> {
  const factory = new SqliteFactory(file, further)
  const { direct } = factory
  const client = new PrismaClient({ adapter: factory, transactionOptions: { maxWait: 30_000, timeout: 10_000 } })
  await client.$connect()
  const intake = takeInOn(direct)
  const opened = await stat(file)
  return {
    engine: 'sqlite',
    client,
    inTurn: () => client,
    takeIn: intake.takeIn,
    backups: new FileBackups(file, now),
    signals: new OwnSignals(),
    shared: false,
    queue: null,
    health: () => healthOf(client),
    answers: async () => {
      await client.$queryRaw`SELECT 1`
      // One that was taken away, or replaced, still answers whoever has it open, and keeps nothing that lasts.
      const now = await stat(file).catch(() => null)
      if (now?.ino !== opened.ino || now.dev !== opened.dev)
        throw new StoreError('The database’s file is no longer where it was opened')
    },
    alone: (_, work) => work(),
    close: async () => {
      direct.close()
      await intake.close()
      await client.$disconnect()
    },
  }
}

async function healthOf(client: PrismaClient): Promise<StoreHealth> {
  const read = async (name: Setting) => {
    const [row] = await client.$queryRawUnsafe<Record<string, unknown>[]>(`PRAGMA ${name}`)
    return String(Object.values(row ?? {})[0])
  }
  const mode = Number(await read('synchronous'))
  return {
    engine: 'sqlite',
    journalMode: await read('journal_mode'),
    synchronous: synchronousModes[mode] ?? String(mode),
  }
}
