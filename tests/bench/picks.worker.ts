import { parentPort } from 'node:worker_threads'
import { type PlayRequest, playRound, type RefineTask } from '../../src/model/picks/index.ts'
import { storedEvent } from './picksEvent.ts'

export type Order =
  | { kind: 'play'; requests: PlayRequest[] }
  | { kind: 'refine'; tasks: RefineTask[]; round: number; seed: number }

const { playing } = storedEvent()
parentPort?.on('message', (order: Order) => {
  parentPort?.postMessage(
    order.kind === 'play'
      ? order.requests.map((request) => playing.play(request))
      : order.tasks.map((task) => playRound(playing, task, { round: order.round, seed: order.seed })),
  )
})
parentPort?.postMessage('ready')
