// @ts-check
// Loaded into a server before it starts: from the first SIGUSR2 to the second it ends one of its threads after the other, in the
// middle of whatever they do, and writes down each in the file ENDED.
import { appendFileSync } from 'node:fs'
import { isMainThread } from 'node:worker_threads'

/** From one thread's end to the next (ms): at another moment of the work each time. @param {number} round */
const delay = (round) => 5 + ((37 * round) % 90)

if (isMainThread) {
  /** Those that have loaded what they run: the first thing that one says. @type {Set<import('node:worker_threads').Worker>} */
  const ready = new Set()
  process.on('worker', (thread) => {
    thread.once('message', () => ready.add(thread))
    thread.once('exit', () => ready.delete(thread))
  })
  let going = false
  let round = 0
  const next = () => {
    if (!going) return
    const chosen = [...ready][round % Math.max(1, ready.size)]
    if (chosen) {
      round++
      ready.delete(chosen)
      appendFileSync(/** @type {string} */ (process.env['ENDED']), `${chosen.threadId}\n`)
      void chosen.terminate()
    }
    setTimeout(next, delay(round))
  }
  process.on('SIGUSR2', () => {
    going = !going
    next()
  })
}
