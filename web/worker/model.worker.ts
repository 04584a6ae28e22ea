import { answer } from './answer.ts'
import { failureOf } from './failure.ts'
import type { FromWorker, ToWorker } from './protocol.ts'

const reply = (message: FromWorker) => postMessage(message)

addEventListener('message', (event: MessageEvent<ToWorker>) => {
  const question = event.data
  try {
    const result = answer(question, (done, total) => reply({ id: question.id, progress: { done, total } }))
    reply({ id: question.id, answer: result })
  } catch (error) {
    reply({ id: question.id, failure: failureOf(error) })
  }
})
