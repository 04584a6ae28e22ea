/** What somebody may do: a lead everything; the others as `mayOf` of each procedure says. */
export const roles = ['lead', 'mechanism', 'scout', 'driveTeam', 'viewer'] as const
export type Role = (typeof roles)[number]

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
