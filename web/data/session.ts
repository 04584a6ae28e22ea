import { useQuery } from '@tanstack/react-query'
import type { Role } from '../../src/model/scouting/roles.ts'
import { client, said, Unreachable } from './api.ts'
import { forgetPacks } from './forgetPacks.ts'

export interface Session {
  claimed: boolean
  workspace: string | null
  person: { id: string; nickname: string; role: Role } | null
  device: { id: string; name: string } | null
  role: Role | null
}

/** Under this name the browser keeps who was in when the server answered last. */
const keptAs = 'cyclewright/session'

function keptSession(): Session | null {
  try {
    return JSON.parse(localStorage.getItem(keptAs) ?? 'null') as Session | null
  } catch {
    return null
  }
}

/** Who is in; without a connection whoever it was, so that what may be done without one still can. The server decides all the same. */
async function sessionNow(): Promise<Session> {
  try {
    const session: Session = await said(client.session.get.query({}))
    noteSession(session)
    return session
  } catch (error) {
    const kept = error instanceof Unreachable ? keptSession() : null
    if (kept) return kept
    throw error
  }
}

let forgotten = false

/** Whoever was signed out from elsewhere keeps nothing of events either. */
function noteSession(session: Session): void {
  const { role } = session
  try {
    localStorage.setItem(keptAs, JSON.stringify(session))
  } catch {
    // Without storage nobody is known without a connection.
  }
  if (role !== null) forgotten = false
  else if (!forgotten) {
    forgotten = true
    forgetPacks()
  }
}

export const useSession = () =>
  useQuery({
    queryKey: ['session'],
    queryFn: sessionNow,
    staleTime: 60_000,
    // A lead may have changed one's role: while another window was in front, or where no news of an event tell it.
    refetchOnWindowFocus: true,
    refetchInterval: 15_000,
  })
