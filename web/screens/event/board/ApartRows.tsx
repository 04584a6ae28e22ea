import { Button, TextInput } from '@mantine/core'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { Row } from '../../../../src/model/scouting/types.ts'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { api } from '../../../data/board.ts'
import { words } from '../../../words/catalogue.ts'
import { moment } from '../../../words/format.ts'
import { nameOfPerson, rowName } from '../matchNames.ts'
import { AllFacts, DifferenceTable, RecordFacts } from '../records/DifferenceTable.tsx'
import { differencesOf } from '../records/differences.ts'
import { factsOf } from '../records/facts.ts'
import { addressOf } from '../visits/photoAddress.ts'
import '../records/records.css'
import type { Apart } from './useBoard.ts'
import '../visits/visits.css'

const decisions = ['kept', 'replaced', 'setAside'] as const
type Decision = (typeof decisions)[number]

/** Rows that wait for a decision, each beside what came first under its id; and what was decided. */
export function ApartRows(props: { pack: StandsPack; apart: readonly Apart[]; event: string }) {
  const { pack, event } = props
  const texts = words().board
  const open = props.apart.filter(({ resolution }) => resolution === null)
  const decided = props.apart.filter(({ resolution }) => resolution !== null)
  return (
    <section className="sheet stack" aria-labelledby="apart">
      <h2 id="apart">{texts.apart}</h2>
      {open.length === 0 && <p className="soft">{texts.nothingApart}</p>}
      {open.map((each) => (
        <ApartRow key={each.arrival} pack={pack} apart={each} event={event} />
      ))}
      {decided.length > 0 && (
        <details>
          <summary>{texts.decided(decided.length)}</summary>
          <ul className="board-decided">
            {decided.map((each) => (
              <Decided key={each.arrival} pack={pack} apart={each} event={event} />
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}

/** What was decided, and the way to decide otherwise. */
function Decided(props: { pack: StandsPack; apart: Apart; event: string }) {
  const { pack, apart, event } = props
  const { row, resolution, resolvedAt, resolvedBy } = apart
  const texts = words().board
  const [anew, setAnew] = useState(false)
  const name = rowName(pack, row)
  const press = anew ? texts.decideAnew.leave : texts.decideAnew.begin
  return (
    <li>
      {name}: {texts.resolutions[resolution!]}, {resolvedAt !== null && moment(resolvedAt)}
      {resolvedBy !== null && `, ${nameOfPerson(pack, resolvedBy)}`}{' '}
      <Button
        variant="default"
        size="compact-sm"
        aria-expanded={anew}
        aria-label={texts.decideAnew.of(press, name)}
        onClick={() => setAnew(!anew)}
      >
        {press}
      </Button>
      {anew && <ApartRow pack={pack} apart={apart} event={event} decided={() => setAnew(false)} />}
    </li>
  )
}

/** Every picture as large as it is: which of two photos is meant can not be said in words. */
const Picture = (props: { row: Row; title: string }) =>
  props.row.kind === 'photo' && <img className="visit-photo" src={addressOf(props.row.body)} alt={props.title} />

/** @param props.decided when a decision that was made before was made anew */
function ApartRow(props: { pack: StandsPack; apart: Apart; event: string; decided?: () => void }) {
  const { pack, apart, event } = props
  const { row, ours, reason: why, resolution: before } = apart
  const texts = words().board
  const { differences } = words().records
  const queries = useQueryClient()
  const [decision, setDecision] = useState<Decision | null>(before)
  const [reason, setReason] = useState('')
  const [tried, setTried] = useState(false)
  const decide = useMutation({
    mutationFn: (resolution: Decision) =>
      api.resolve({
        event,
        arrival: apart.arrival,
        resolution,
        ...(before === null ? {} : { before }),
        ...(reason.trim() === '' ? {} : { reason: reason.trim() }),
      }),
    onSuccess: props.decided,
    onSettled: () =>
      Promise.all(['apart', 'board'].map((key) => queries.invalidateQueries({ queryKey: [key, event] }))),
  })
  const theirs = factsOf(pack, row)
  const first = ours ? factsOf(pack, ours) : null
  const compared = first ? differencesOf(first, theirs) : null
  const missing = tried && decision === null
  const sentences = ours ? texts.decisions : texts.decisionsAlone
  return (
    <article className="stack record-card">
      <h3>{rowName(pack, row)}</h3>
      {before !== null && <p>{texts.decideAnew.help}</p>}
      <p>
        {texts.reasons[why]} {texts.cameFrom(nameOfPerson(pack, row.scout), moment(apart.receivedAt))}
      </p>
      {compared && compared.differ.length === 0 && <p>{differences.same}</p>}
      {compared && compared.differ.length > 0 && (
        <>
          <DifferenceTable differ={compared.differ} first={texts.ours} later={texts.theirs} />
          {compared.alike > 0 && <p className="soft">{differences.alike(compared.alike)}</p>}
        </>
      )}
      {first ? (
        <div className="board-sides">
          <AllFacts title={`${texts.ours}: ${differences.all}`} facts={first} />
          <AllFacts title={`${texts.theirs}: ${differences.all}`} facts={theirs} />
        </div>
      ) : (
        <>
          <p className="soft">{texts.nothingOurs}</p>
          <RecordFacts facts={theirs} />
        </>
      )}
      <div className="board-sides">
        {ours && <Picture row={ours} title={texts.ours} />}
        <Picture row={row} title={texts.theirs} />
      </div>
      <fieldset className="board-decisions" aria-describedby={missing ? `missing-${apart.arrival}` : undefined}>
        <legend>{texts.decide}</legend>
        {decisions
          // Where nothing came first there is nothing to keep.
          .filter((each) => ours || each !== 'kept')
          .map((each) => (
            <label key={each}>
              <input
                type="radio"
                name={`decision-${apart.arrival}`}
                checked={decision === each}
                onChange={() => setDecision(each)}
              />
              {sentences[each]}
            </label>
          ))}
        {missing && (
          <p id={`missing-${apart.arrival}`} className="loss">
            {texts.decisionMissing}
          </p>
        )}
      </fieldset>
      <TextInput
        className="board-reason"
        label={words().records.choice.reason}
        value={reason}
        maxLength={500}
        onChange={(change) => setReason(change.currentTarget.value)}
      />
      {decide.error && (
        <p role="alert" className="loss">
          {decide.error.message}
        </p>
      )}
      <div>
        <Button
          variant="default"
          loading={decide.isPending}
          disabled={before !== null && decision === before}
          onClick={() => (decision === null ? setTried(true) : decide.mutate(decision))}
        >
          {texts.decideDo}
        </Button>
      </div>
    </article>
  )
}
