import type { codes } from '../words/en/codes.ts'

/** What is said around codes: handed in, because the screens and the stands keep their texts apart. */
export type CodeTexts = typeof codes
