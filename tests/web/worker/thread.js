// @ts-check
// A real thread in the place of the browser's worker: it answers with the question's number, at once or after 1.6 s, hangs, runs out of memory or breaks.
import { parentPort } from 'node:worker_threads'

parentPort?.on('message', (/** @type {{ id: number, from: string }} */ { id, from }) => {
  const reply = (/** @type {object} */ message) => parentPort?.postMessage({ id, ...message })
  if (from === 'hang') for (;;);
  const until = Date.now() + (from === 'slow' ? 1600 : 0)
  while (Date.now() < until);
  if (from === 'break') throw new Error('The thread broke.')
  try {
    if (from === 'fill') new Float64Array(2 ** 45)
  } catch (error) {
    reply({ failure: { code: 'outOfMemory', message: String(error) } })
    return
  }
  if (from === 'refuse') reply({ failure: { code: 'invalid', message: 'pace must be at least 1, got 0' } })
  else reply({ answer: id })
})
