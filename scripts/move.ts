import { moveWorkspace } from '../src/store/index.ts'

/**
 * Copies a workspace into another database, of the same or of the other engine. The addresses are read from the environment, because every user of the
 * machine sees what stands on a command line, and one of them may hold a password.
 */
async function main(name: string | undefined, { MOVE_FROM: from, MOVE_TO: to }: NodeJS.ProcessEnv) {
  if (!from || !to)
    throw new Error(
      'Usage: MOVE_FROM=file:./data/cyclewright.db MOVE_TO=postgresql://… npm run move -- name, with no server running on either',
    )
  const moved = await moveWorkspace({ from, to, name: name ?? 'default' })
  for (const { table, rows, hash } of moved) if (rows > 0) console.log(`${table}: ${rows} rows, ${hash.slice(0, 16)}`)
  console.log('Everything is there with the same hashes. The database that it came from is as it was.')
}

try {
  await main(process.argv[2], process.env)
} catch (error) {
  console.error(error instanceof Error ? error.message : error)
  process.exit(1)
}
