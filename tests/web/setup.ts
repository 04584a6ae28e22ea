import { allWords } from '../../web/words/catalogue.ts'

// A screen waits for its texts before it is drawn; a test of one begins there.
await allWords()
