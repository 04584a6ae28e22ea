import { explain } from './explain.ts'
import { shell } from './shell.ts'
import { worker } from './worker.ts'

/** The English texts, one file per area of the screens. */
export const en = { explain, shell, worker }
