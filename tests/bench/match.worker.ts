import { parentPort } from 'node:worker_threads'
import { even } from './match.bench.ts'

const matches = even()
parentPort?.on('message', ({ from, to }: { from: number; to: number }) => {
  matches.play(from, to)
  parentPort?.postMessage('played')
})
parentPort?.postMessage('ready')
