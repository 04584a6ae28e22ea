import { Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { type ReactNode, useState } from 'react'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { api } from '../../../data/board.ts'
import { Panel } from '../../../shell/Panel.tsx'
import { Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { moment } from '../../../words/format.ts'
import { nameOfMatch, nameOfPerson } from '../matchNames.ts'
import { Choosing } from './Choosing.tsx'
import { type Corrected, CorrectForm, type ObservationRow } from './CorrectForm.tsx'
import { RecordFacts } from './DifferenceTable.tsx'
import { factsOf } from './facts.ts'
import './records.css'

export type InForce = Awaited<ReturnType<typeof api.observations>>[number] & { row: ObservationRow }

/** Which records are looked at: of a match, of one robot in it, or some by their ids. */
export interface Looked {
  match: string | null
  team: string | null
  ids: readonly string[] | null
}

/** Records of a robot or a match: what they say, which counts, and the way to correct one. */
export function RecordPanel(props: {
  pack: StandsPack
  looked: Looked
  onCorrected(corrected: Corrected): void
  note: ReactNode
  onClose(): void
}) {
  const { pack, looked } = props
  const { match, team, ids } = looked
  const event = pack.event.id
  const texts = words().records.panel
  const found = useQuery({
    queryKey: ['board', event, 'observations', match],
    queryFn: () => api.observations(event, match) as Promise<InForce[]>,
  })
  const [correcting, setCorrecting] = useState<InForce | null>(null)
  const shown = (found.data ?? []).filter(
    (each) => (team === null || each.team === team) && (ids === null || ids.includes(each.row.id)),
  )
  const robots = shown.filter(({ row }) => row.body.subject === 'robot')
  const name = match === null ? words().records.correct.outside : nameOfMatch(pack, match)
  return (
    <Panel title={texts.title(name, team)} open onClose={props.onClose}>
      {props.note}
      {correcting ? (
        <CorrectForm
          key={correcting.row.id}
          pack={pack}
          row={correcting.row}
          team={correcting.team}
          onBack={() => setCorrecting(null)}
          onDone={(corrected) => {
            setCorrecting(null)
            props.onCorrected(corrected)
          }}
        />
      ) : found.error && !found.data ? (
        <Trouble title={texts.notLoaded} error={found.error} retry={() => void found.refetch()} />
      ) : !found.data ? (
        <Loading what={texts.loading} />
      ) : (
        <>
          {match !== null && team !== null && robots.length > 1 && (
            <Choosing pack={pack} match={match} team={team} records={robots} />
          )}
          {shown.length === 0 && <p>{texts.empty}</p>}
          {shown.map((each) => (
            <RecordCard
              key={each.row.id}
              pack={pack}
              record={each}
              withTeam={team === null}
              onCorrect={() => setCorrecting(each)}
            />
          ))}
        </>
      )}
    </Panel>
  )
}

/** What the card says elsewhere. */
const understood = new Set(['match', 'team', 'scout'])

function RecordCard(props: { pack: StandsPack; record: InForce; withTeam: boolean; onCorrect(): void }) {
  const { pack, record } = props
  const { row, team, receivedAt, replaces, counts } = record
  const texts = words().records
  const scout = nameOfPerson(pack, row.scout)
  const facts = factsOf(pack, { ...row, body: { ...row.body, team } })
  return (
    <article className="stack record-card">
      <h3>
        {props.withTeam && `${team}: `}
        {texts.panel.by(scout, moment(receivedAt))}
        {!counts && <span className="record-apart"> ✕ {texts.choice.apart}</span>}
      </h3>
      {replaces !== null && <p className="soft">{texts.panel.corrected}</p>}
      <RecordFacts facts={facts.filter(({ key }) => !understood.has(key))} />
      <div>
        <Button variant="default" aria-label={texts.panel.correctOf(scout)} onClick={props.onCorrect}>
          {texts.panel.correct}
        </Button>
      </div>
    </article>
  )
}
