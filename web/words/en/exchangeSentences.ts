/** What is wrong with files of an event: in English the model's own sentences. */
export { exchangeSentences as ofExchange } from '../../../src/model/event/archive/sentences.ts'
