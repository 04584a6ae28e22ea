import { useQuery } from '@tanstack/react-query'
import type { Role } from '../../src/model/scouting/roles.ts'
import { client, said } from './api.ts'
import { forgetPacks } from './forgetPacks.ts'

export interface Session {
  claimed: boolean
  workspace: string | null
  person: { id: string; nickname: string; role: Role } | null
  device: { id: string; name: string } | null
  role: Role | null
}

let forgotten = false

/** Whoever was signed out from elsewhere keeps nothing of events either. */
function noteSession({ role }: Session): void {
  if (role !== null) forgotten = false
  else if (!forgotten) {
    forgotten = true
    forgetPacks()
  }
}

export const useSession = () =>
  useQuery({
    queryKey: ['session'],
    queryFn: async (): Promise<Session> => {
      const session: Session = await said(client.session.get.query({}))
      noteSession(session)
      return session
    },
    staleTime: 60_000,
    // A lead may have changed one's role: while another window was in front, or where no news of an event tell it.
    refetchOnWindowFocus: true,
    refetchInterval: 15_000,
  })
