/** What somebody may do: a lead everything; the others as each procedure says. */
export const roles = ['lead', 'mechanism', 'scout', 'driveTeam', 'viewer'] as const
export type Role = (typeof roles)[number]
