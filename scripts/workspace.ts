import { claimAddress, claimHours } from '../src/claiming.ts'
import { readConfig } from '../src/config.ts'
import { openStore } from '../src/store/index.ts'

/**
 * Makes a workspace, a second team's for instance, and prints the link by which somebody becomes its lead. For a workspace
 * that is there it prints a new link: the way back when nobody knows a passphrase any more, for whoever has this machine.
 */
async function main(name: string | undefined) {
  if (name === undefined || !/^[\w .-]{1,60}$/.test(name)) {
    throw new Error('Usage: npm run workspace -- name, with letters, digits, spaces, points and hyphens')
  }
  const { databaseUrl, copyBefore, port, tls } = readConfig(process.env)
  const store = await openStore(databaseUrl, { copyBefore })
  try {
    const { token } = await store.entrance.claimLink(await store.ensureWorkspace(name), claimHours)
    console.log(
      `Whoever opens this link on the running server within ${claimHours} hours becomes a lead of “${name}”; it is good once:`,
    )
    console.log(claimAddress(`${tls ? 'https' : 'http'}://localhost:${port}`, token))
  } finally {
    await store.close()
  }
}

try {
  await main(process.argv[2])
} catch (error) {
  console.error(error instanceof Error ? error.message : error)
  process.exit(1)
}
