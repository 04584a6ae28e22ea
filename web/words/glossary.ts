import type { Words } from './catalogue.ts'

/** A word that the glossary explains. */
export type GlossaryWord = keyof Words['glossary']
