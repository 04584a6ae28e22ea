import type { Game } from '../../../src/model/documents/types.ts'
import { words } from '../../words/catalogue.ts'
import type { User } from './edits.ts'

/** Who uses a mechanism, where, and whether its time follows: 'Raise the arm, Gantry (follows)'. */
export function userWords({ at, name, follows }: User, { sources, goals, finishes }: Game): string {
  const texts = words().timings.list
  const place = [...sources, ...goals, ...finishes].find(({ id }) => id === at[1])
  const user = name === null ? texts.drive : place ? `${name}, ${place.name}` : name
  return (follows ? texts.follows : texts.beside)(user)
}
