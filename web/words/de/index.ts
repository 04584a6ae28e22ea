import type { Words } from '../catalogue.ts'
import { explain } from './explain.ts'
import { shell } from './shell.ts'
import { worker } from './worker.ts'

/** The German texts. */
export const de: Words = { explain, shell, worker }
