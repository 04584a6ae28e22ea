import { answer } from './answer.ts'
import { failureOf } from './failure.ts'
import type { FromWorker, ToWorker } from './protocol.ts'

const reply = (message: FromWorker) => postMessage(message)

async function answered(question: ToWorker): Promise<void> {
  try {
    const result = await answer(question, (done, total) => reply({ id: question.id, progress: { done, total } }))
    reply({ id: question.id, answer: result })
  } catch (error) {
    reply({ id: question.id, failure: failureOf(error) })
  }
}

// In the order asked: while one waits for its part of the model to be loaded, the next does not begin.
let last = Promise.resolve()
addEventListener('message', (event: MessageEvent<ToWorker>) => {
  last = last.then(() => answered(event.data))
})
