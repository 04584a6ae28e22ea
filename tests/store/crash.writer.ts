import { openStore } from '../../src/store/index.ts'

/** Saves as fast as it can until it is killed, and prints each save that was acknowledged. */
const [url, round] = process.argv.slice(2)
const store = await openStore(url!)
const team = store.workspace(await store.ensureWorkspace('team'))

async function writer(id: string) {
  let base = (await team.get('game', id))?.revision ?? null
  for (;;) {
    const body = { round, filler: 'x'.repeat(20_000), end: true }
    const outcome = await team.save({ kind: 'game', id, name: id, body, base })
    if ('conflict' in outcome) throw new Error('nobody else writes this document')
    base = outcome.saved.revision
    process.stdout.write(`${id} ${base}\n`)
  }
}

await Promise.all(['a', 'b', 'c'].map(writer))
