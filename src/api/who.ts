import { type Role, roles } from '../model/scouting/roles.ts'
import { ApiError } from './errors.ts'
import { say } from './sentences.ts'

export { type Role, roles }

/** Whose request it is. */
export interface Who {
  role: Role
  /** Id of the person; null while the server belongs to nobody yet and whoever sits at it acts as its lead. */
  person: string | null
  nickname: string
  /** Id of the device that is signed in. */
  device: string | null
}

/** While nobody has claimed the server, it is reached from its own machine only. */
export const whoeverSitsHere: Who = { role: 'lead', person: null, nickname: '', device: null }

/** Who may call a procedure besides leads, who may call all. */
export type May = readonly Exclude<Role, 'lead'>[]

/** The usual answers, by what a procedure is for. */
export const may = {
  /** People, and what decides over an event. */
  lead: [],
  /** Changing documents of the design weeks. */
  design: ['mechanism'],
  /** Computing with them. */
  compute: ['mechanism', 'driveTeam'],
  /** Looking at documents and answers. */
  read: ['mechanism', 'driveTeam', 'viewer'],
  /** What everybody does who is signed in. */
  member: ['mechanism', 'scout', 'driveTeam', 'viewer'],
} as const satisfies { readonly [name: string]: May }

/** Whoever asks, if the request is one of theirs; otherwise an error that says why not. */
export function admitted(who: Who | null, allowed: May): Who {
  if (!who) throw new ApiError({ code: 'unauthenticated', ...say({ code: 'noSession', parts: {} }) })
  if (who.role === 'lead' || allowed.includes(who.role)) return who
  throw new ApiError({ code: 'forbidden', ...say({ code: 'notForRole', parts: { role: who.role } }) })
}
