import { useLocation, useSearch } from 'wouter'
import { useTimedTeams } from '../../data/fieldCheck.ts'
import type { EventPage } from './EventFrame.tsx'

/** Whose event it is: as the address says, as the event says, else who was timed in practice. Null: not known yet. */
export function useOurTeam({ event }: EventPage): { team: string | null; choose(team: string): void } {
  const asked = useSearch()
  const [path, go] = useLocation()
  const timed = useTimedTeams(event.id)
  const named = new URLSearchParams(asked).get('team')
  const known = (team: string | null | undefined) =>
    event.body.teams.some((each) => each.team === team) ? (team as string) : null
  const practised = timed.data?.find(({ practice }) => practice > 0)?.team
  const settled = timed.data || timed.error ? event.body.teams[0]?.team : undefined
  return {
    team: known(named) ?? known(event.body.own) ?? known(practised) ?? known(settled),
    choose: (team) => {
      const search = new URLSearchParams(asked)
      search.set('team', team)
      go(`${path}?${search}`, { replace: true })
    },
  }
}
