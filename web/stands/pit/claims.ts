import type { PitVisit } from '../../../src/model/scouting/types.ts'

/** A visit's form as typed. */
export interface TypedVisit {
  goals: { [goal: string]: string }
  cycle: string
  finish: string
  routines: string
  size: string
  mass: string
  note: string
}

export const freshVisit: TypedVisit = { goals: {}, cycle: '', finish: '', routines: '', size: '', mass: '', note: '' }

export type VisitProblem = { kind: 'notANumber'; got: string } | { kind: 'tooMuch'; most: number }

/** What the server takes at most: pieces a match, seconds, kilograms. */
const most = { goal: 1000, cycle: 600, mass: 1000 } as const

/** The claims, or what is wrong with which field. Empty fields were not said. */
export function readClaims(
  typed: TypedVisit,
): { claims: PitVisit['claims']; note?: string } | { problems: { [field: string]: VisitProblem } } {
  const problems: { [field: string]: VisitProblem } = {}
  const number = (field: string, text: string, limit: number): number | undefined => {
    const plain = text.trim().replace(',', '.')
    if (plain === '') return undefined
    if (!/^\d+(\.\d+)?$/.test(plain)) problems[field] = { kind: 'notANumber', got: text.trim() }
    else if (Number(plain) > limit) problems[field] = { kind: 'tooMuch', most: limit }
    else return Number(plain)
    return undefined
  }
  const goals = Object.entries(typed.goals).flatMap(([goal, text]) => {
    const pieces = number(`goal ${goal}`, text, most.goal)
    return pieces === undefined ? [] : [[goal, pieces] as const]
  })
  const cycle = number('cycle', typed.cycle, most.cycle)
  if (cycle === 0) problems['cycle'] = { kind: 'notANumber', got: typed.cycle.trim() }
  const mass = number('mass', typed.mass, most.mass)
  const routines = typed.routines
    .split(',')
    .map((name) => name.trim().slice(0, 100))
    .filter((name) => name !== '')
    .slice(0, 20)
  const size = typed.size.trim()
  const note = typed.note.trim()
  if (Object.keys(problems).length > 0) return { problems }
  return {
    claims: {
      ...(goals.length > 0 && { goals: Object.fromEntries(goals) }),
      ...(cycle !== undefined && { cycle }),
      ...(typed.finish !== '' && { finish: typed.finish }),
      ...(routines.length > 0 && { routines }),
      ...(size !== '' && { size: size.slice(0, 200) }),
      ...(mass !== undefined && { mass }),
    },
    ...(note !== '' && { note: note.slice(0, 2000) }),
  }
}
