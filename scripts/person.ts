import { existsSync } from 'node:fs'
import { readConfig } from '../src/config.ts'
import { closedByAll } from '../src/store/backups/index.ts'
import { onlyWorkspace, openStore, type Store } from '../src/store/index.ts'
import { fileOf, isPostgresql } from '../src/store/open.ts'

const usage =
  'Usage: npm run person -- data "nickname", or npm run person -- erase "nickname"; the name of a workspace may follow'

/** Whoever is called so, members who have left too. */
async function personOf(store: Store, [nickname, workspace = onlyWorkspace]: readonly (string | undefined)[]) {
  if (nickname === undefined) throw new Error(usage)
  const id = await store.workspaceNamed(workspace)
  if (id === null) throw new Error(`There is no workspace “${workspace}”.`)
  const { people } = store.workspace(id)
  const found = (await people.list()).find((each) => each.nickname.toLowerCase() === nickname.trim().toLowerCase())
  if (!found) throw new Error(`Nobody in “${workspace}” is called ${nickname}.`)
  return { people, found }
}

/** What is held of a person, and deleting it, for whoever has the machine. */
async function main([what, ...of]: readonly (string | undefined)[]) {
  const { databaseUrl, copyBefore } = readConfig(process.env)
  if (what !== 'data' && what !== 'erase') throw new Error(usage)
  const file = isPostgresql(databaseUrl) ? null : fileOf(databaseUrl)
  if (file !== null && !existsSync(file)) throw new Error(`There is no database ${file} yet.`)
  // A server that runs would still know who is signed in.
  if (what === 'erase' && file !== null) closedByAll(file)
  const store = await openStore(databaseUrl, { copyBefore })
  try {
    const { people, found } = await personOf(store, of)
    if (what === 'data') {
      console.log(
        JSON.stringify({ format: 1, madeAt: new Date().toISOString(), ...(await people.held(found.id)) }, null, 1),
      )
      return
    }
    const by = { person: null, device: null }
    const outcome = await people.erase(found.id, { nickname: found.nickname, by })
    if (outcome === 'lastLead')
      throw new Error('This is the last lead with a passphrase: make somebody else a lead first (npm run workspace).')
    if (typeof outcome === 'string') throw new Error('The person is gone already.')
    console.log(
      `Deleted. ${outcome.records} records stay, by nobody; the name was taken out of ${outcome.driven} records as the driver’s and out of ${outcome.typed} revisions of decision records. Copies of the database keep it until they are removed: npm run backups lists them.`,
    )
  } finally {
    await store.close()
  }
}

try {
  await main(process.argv.slice(2))
} catch (error) {
  console.error(error instanceof Error ? error.message : error)
  process.exitCode = 1
}
