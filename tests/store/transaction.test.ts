import { join } from 'node:path'
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'
import type { SqlDriverAdapterFactory } from '@prisma/driver-adapter-utils'
import { expect, onTestFinished, test } from 'vitest'
import { projectRoot } from '../../src/root.ts'
import { PrismaClient } from '../../src/store/generated/client.ts'
import { migrate } from '../../src/store/migrate.ts'
import { SqliteFactory } from '../../src/store/sqlite/factory.ts'
import { scratchFolder } from './scratch.ts'

const now = () => new Date(0)
const row = (name: string) => ({ data: { id: name, name, createdAt: now() } })

async function clientOn(factoryOf: (file: string) => SqlDriverAdapterFactory) {
  const file = join(scratchFolder(), 'team.db')
  await migrate(file, join(projectRoot(), 'prisma', 'migrations'), now)
  const client = new PrismaClient({ adapter: factoryOf(file) })
  onTestFinished(() => client.$disconnect())
  return client
}

const ours = () => clientOn((file) => new SqliteFactory(file))

class Change extends Error {}

/** Opens a transaction that adds 'undone', has `beside` begin meanwhile, and rolls back. */
async function beside<Result>(client: PrismaClient, begin: () => Promise<Result>): Promise<Result> {
  let answer: Promise<Result> | undefined
  const transaction = client.$transaction(async (inside) => {
    await inside.workspace.create(row('undone'))
    // The client's promises begin only when somebody waits for them.
    answer = Promise.resolve().then(begin)
    // Time enough for the other query to run, were it let in.
    await new Promise((resolve) => setTimeout(resolve, 50))
    throw new Change()
  })
  await expect(transaction).rejects.toThrow(Change)
  return answer!
}

const names = async (client: PrismaClient) => (await client.workspace.findMany()).map(({ name }) => name)

test('a write answered OK survives the roll-back of another’s open transaction', async () => {
  const client = await ours()
  await beside(client, () => client.workspace.create(row('kept')))
  expect(await names(client)).toEqual(['kept'])
})

test('a raw write and a batch survive it too', async () => {
  const client = await ours()
  await beside(client, () => client.$executeRaw`INSERT INTO Workspace VALUES ('raw', 'raw', 0)`)
  await beside(client, () => client.$transaction([client.workspace.create(row('batch'))]))
  expect((await names(client)).sort()).toEqual(['batch', 'raw'])
})

test('a reader does not see rows that were never committed', async () => {
  const client = await ours()
  expect(await beside(client, () => names(client))).toEqual([])
})

test('a reader sees the committed rows once the transaction before it has ended', async () => {
  const client = await ours()
  let seen: Promise<string[]> | undefined
  await client.$transaction(async (inside) => {
    await inside.workspace.create(row('done'))
    seen = names(client)
    await new Promise((resolve) => setTimeout(resolve, 20))
  })
  expect(await seen).toEqual(['done'])
})

test('the driver’s own adapter still loses that write, so ours is still needed', async () => {
  const client = await clientOn((file) => new PrismaBetterSqlite3({ url: file }))
  await beside(client, () => client.workspace.create(row('kept')))
  expect(await names(client)).toEqual([])
})

test('a commit that the database refuses leaves no transaction open behind it', async () => {
  const client = await ours()
  const refused = client.$transaction(async (inside) => {
    await inside.$executeRaw`PRAGMA defer_foreign_keys = ON`
    await inside.$executeRaw`INSERT INTO Document VALUES ('nowhere', 'game', 'a', 'A', 1, 0, false)`
  })
  await expect(refused).rejects.toThrow()
  await client.workspace.create(row('after'))
  await client.$transaction((inside) => inside.workspace.create(row('later')))
  expect(await names(client)).toEqual(['after', 'later'])
  expect(await client.document.count()).toBe(0)
})

test('a transaction that timed out while it waited for its turn keeps nobody waiting', async () => {
  const client = await ours()
  const slow = client.$transaction(async (inside) => {
    await inside.workspace.create(row('slow'))
    await new Promise((resolve) => setTimeout(resolve, 300))
  })
  await new Promise((resolve) => setTimeout(resolve, 50))
  const impatient = client.$transaction((inside) => inside.workspace.create(row('impatient')), { maxWait: 50 })
  await expect(impatient).rejects.toThrow(/transaction/i)
  await slow
  await client.workspace.create(row('after'))
  expect(await names(client)).toEqual(['slow', 'after'])
})

test('while rows come in past the client, it reads what is committed, and its own writes wait their turn', async () => {
  let factory: SqliteFactory | undefined
  const client = await clientOn((file) => {
    factory = new SqliteFactory(file)
    return factory
  })
  await client.workspace.create(row('first'))
  const { direct } = factory!
  let end = () => {}
  const turn = direct.turn(
    () =>
      new Promise<void>((resolve) => {
        end = resolve
      }),
  )
  let written = false
  const write = client.workspace.create(row('second')).then(() => {
    written = true
  })
  // A read that began after the write, and does not wait for it.
  await new Promise((resolve) => setTimeout(resolve, 50))
  expect(await names(client)).toEqual(['first'])
  expect(written).toBe(false)
  end()
  await Promise.all([turn, write])
  expect(await names(client)).toEqual(['first', 'second'])
})
