import { NativeSelect } from '@mantine/core'
import { useLooks } from '../../../data/looks.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { points } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { matchName } from '../names.ts'
import { useOurTeam } from '../useOurTeam.ts'
import { LookPlan } from './LookPlan.tsx'
import { LookTable } from './LookTable.tsx'
import './look.css'

/** Where one more look is worth most for whom we invite: first of all for who is free, then shared out among people. */
export function LookPart(page: EventPage) {
  const texts = words().look
  if (!page.lead) return <p className="sheet">{texts.leadOnly}</p>
  return <ForLeads {...page} />
}

function ForLeads(page: EventPage) {
  const texts = words().look
  const { team, choose } = useOurTeam(page)
  const looks = useLooks(page.event.id, team, page.watching.mark)
  const named = (id: string) => {
    const found = page.schedule.matches.find(({ match }) => match.id === id)
    return found ? matchName(found.match) : id
  }
  return (
    <>
      <section className="sheet stack" aria-labelledby="look">
        <h2 id="look">{texts.title}</h2>
        {team !== null && (
          <NativeSelect
            className="no-print"
            label={texts.team}
            value={team}
            data={page.event.body.teams.map((each) => each.team)}
            onChange={({ currentTarget: { value } }) => choose(value)}
          />
        )}
        {looks.error && !looks.data ? (
          <Trouble title={texts.trouble} error={looks.error} retry={() => void looks.refetch()} />
        ) : !looks.data ? (
          <Loading what={texts.what} />
        ) : (
          <Answer data={looks.data} named={named} />
        )}
      </section>
      {looks.data && looks.data.coming > 0 && team !== null && (
        <LookPlan page={page} team={team} unwatched={looks.data.unwatched} named={named} />
      )}
    </>
  )
}

type Data = NonNullable<ReturnType<typeof useLooks>['data']>

function Answer({ data, named }: { data: Data; named(id: string): string }) {
  const texts = words().look
  const { decision, teams, coming } = data
  if (coming === 0)
    return (
      <Empty title={texts.noMatches}>
        <p>{texts.noMatchesHow}</p>
      </Empty>
    )
  if (teams.length === 0) return <p>{texts.noCandidates}</p>
  const best = teams.find(({ next, worth }) => next !== null && worth >= 5e-5)
  return (
    <>
      <p className="answer">{best ? texts.first(best.team, named(best.next!)) : texts.firstNone}</p>
      {best && <p>{texts.firstWorth(points(1000 * best.worth))}</p>}
      <p>
        {texts.decision(decision.seed, decision.alliances)} {decision.seed === decision.alliances && texts.notCaptain}
      </p>
      <p className="soft">{texts.why}</p>
      <LookTable teams={teams} named={named} />
    </>
  )
}
