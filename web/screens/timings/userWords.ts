import { words } from '../../words/catalogue.ts'
import type { User } from './edits.ts'

/** Who uses a mechanism, and whether its time follows: 'Raise the arm (follows)'. */
export function userWords({ name, follows }: User): string {
  const texts = words().timings.list
  return (follows ? texts.follows : texts.beside)(name ?? texts.drive)
}
