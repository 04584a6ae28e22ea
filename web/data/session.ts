import { useQuery } from '@tanstack/react-query'
import type { Role } from '../../src/model/scouting/roles.ts'
import { client, said } from './api.ts'

export interface Session {
  claimed: boolean
  workspace: string | null
  person: { id: string; nickname: string; role: Role } | null
  device: { id: string; name: string } | null
  role: Role | null
}

export const useSession = () =>
  useQuery({
    queryKey: ['session'],
    queryFn: (): Promise<Session> => said(client.session.get.query({})),
    staleTime: 60_000,
    // A lead may have changed one's role: while another window was in front, or where no news of an event tell it.
    refetchOnWindowFocus: true,
    refetchInterval: 15_000,
  })
