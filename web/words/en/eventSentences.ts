/** What is wrong with schedules, results and assignments: in English the model's own sentences. */
export { eventSentences as ofEvents } from '../../../src/model/event/sentences.ts'
