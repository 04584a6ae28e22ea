import { Link, useLocation, useSearch } from 'wouter'
import type { Stored } from '../../../data/documents.ts'
import { type FieldQuestion, type RunKind, useFieldCheck, useTimedTeams } from '../../../data/fieldCheck.ts'
import { Cautions } from '../../../shell/Cautions.tsx'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import type { EventPage } from '../EventFrame.tsx'
import { Answer } from './Answer.tsx'
import { Choices } from './Choices.tsx'
import { DriverTable } from './DriverTable.tsx'
import { Legs } from './Legs.tsx'
import { MatchDrivers } from './MatchDrivers.tsx'
import { useDesigns } from './useDesigns.ts'
import { type Frozen, useFrozen } from './useFrozen.ts'
import { WriteBack } from './WriteBack.tsx'
import './field.css'

const kinds = ['match', 'practice'] as const

/** What a design says of its trips beside what was timed: which robot, which design and which runs stand in the address. */
export function FieldPart(page: EventPage) {
  const texts = words().fieldCheck
  const { id } = page.event
  const search = new URLSearchParams(useSearch())
  const [, go] = useLocation()
  const timed = useTimedTeams(id)
  const designs = useDesigns(page.game.id)
  const frozen = useFrozen(page.game.id, designs.data)
  const error =
    (timed.error && !timed.data && timed.error) ||
    (designs.error && !designs.data && designs.error) ||
    (!frozen.data && frozen.error)
  if (error) {
    const again = () => {
      void timed.refetch()
      designs.refetch()
      frozen.refetch()
    }
    return <Trouble title={texts.trouble} error={error} retry={again} />
  }
  if (!timed.data || !designs.data || !frozen.data) return <Loading what={texts.what} />
  const team = search.get('team') ?? timed.data[0]?.team
  const design = designs.data.find((each) => each.id === search.get('design')) ?? designs.data[0]
  const kept = frozen.data.find(
    ({ decision, robot }) => decision.id === search.get('decision') && robot.id === design?.id,
  )
  const only = kinds.find((kind) => kind === search.get('only')) ?? null
  const choose = (next: Partial<FieldQuestion>) => {
    const now = { team, design: design?.id, decision: kept?.decision.id, only, ...next }
    const query = Object.entries(now).flatMap(([name, value]) => (value ? [[name, value]] : []))
    go(`/event/${id}/field?${new URLSearchParams(query)}`, { replace: true })
  }
  return (
    <section className="stack field-check" aria-labelledby="field-check">
      <div className="sheet stack">
        <h2 id="field-check">{texts.title}</h2>
        <p>{texts.intro}</p>
        {timed.data.length === 0 || team === undefined ? (
          <Empty title={texts.noTimelines}>
            <p>
              {texts.noTimelinesHow} <a href="/stands">{words().event.places.stands}</a>
            </p>
          </Empty>
        ) : !design ? (
          <Empty title={texts.noDesign}>
            <p>
              {texts.noDesignHow} <Link href="/designs">{texts.toDesigns}</Link>
            </p>
          </Empty>
        ) : (
          <Choices
            page={page}
            timed={timed.data}
            designs={designs.data}
            frozen={frozen.data}
            chosen={{ team, design: design.id, decision: kept?.decision.id ?? null, only }}
            choose={choose}
          />
        )}
      </div>
      {team !== undefined && design && timed.data.length > 0 && (
        <Found
          key={`${team} ${design.id} ${kept?.decision.id}`}
          page={page}
          now={design}
          frozen={kept ?? null}
          team={team}
          only={only}
        />
      )}
    </section>
  )
}

function Found(props: {
  page: EventPage
  now: Stored<'design'>
  frozen: Frozen | null
  team: string
  only: RunKind | null
}) {
  const { page, now, frozen, team, only } = props
  const texts = words().fieldCheck
  const decision = frozen?.decision.id ?? null
  const check = useFieldCheck(page.event.id, { team, design: now.id, decision, only, revision: now.revision })
  if (check.error && !check.data)
    return <Trouble title={texts.notCompared} error={check.error} retry={() => void check.refetch()} />
  if (!check.data) return <Loading what={texts.whatCompared} />
  const { report, changes } = check.data
  const { revision } = check.data.design
  const design: Stored<'design'> = frozen
    ? {
        ...now,
        name: frozen.robot.name,
        revision: revision ?? now.revision,
        body: { ...now.body, robot: frozen.robot },
      }
    : now
  const about = { page, design, report }
  if (!report.whole)
    return (
      <div className="sheet">
        <Empty title={report.runs.length === 0 ? texts.noRuns : texts.noTrips}>
          <p>{report.runs.length === 0 ? texts.noRunsHow : texts.noTripsHow}</p>
        </Empty>
      </div>
    )
  return (
    // The last answer stays while the next one is on its way.
    <div
      className="stack"
      aria-busy={check.isPlaceholderData}
      style={check.isPlaceholderData ? { opacity: 0.55 } : undefined}
    >
      <Answer
        {...about}
        team={team}
        only={only}
        frozenIn={frozen?.decision ?? null}
        changes={changes}
        whole={report.whole}
      />
      {report.legs.length > 0 && <Legs {...about} whole={report.whole} />}
      <DriverTable report={report}>
        <MatchDrivers page={page} report={report} team={team} />
      </DriverTable>
      <WriteBack key={`${design.revision} ${only}`} {...about} team={team} />
      <Cautions which={['spinning', 'lifted', 'air', 'energy']} />
    </div>
  )
}
