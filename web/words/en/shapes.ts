/** In English, what a contract finds and what is refused are the program's own sentences. */
export { storedSentences as stored } from '../../../src/model/documents/refusals.ts'
export { shapeSentences as shapes } from '../../../src/model/documents/shapes.ts'
