import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { Category, Doubt, Evidence } from '../../../../src/model/scouting/doubts/types.ts'
import { client, said } from '../../../data/api.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { listed, plain, points } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { allianceName, matchName } from '../names.ts'
import { useCorrected } from '../records/Corrected.tsx'
import { type Looked, RecordPanel } from '../records/RecordPanel.tsx'
import { usePeopleNames } from '../usePeopleNames.ts'
import { useNamedPack } from '../useStandsPack.ts'
import { Without } from './Without.tsx'
import './doubts.css'

/** Records that do not fit the officials or each other: flagged, never left out, until a lead has looked. */
export function DoubtsPart(page: EventPage) {
  const texts = words().doubts
  const { id } = page.event
  const pack = useNamedPack(id)
  const corrected = useCorrected()
  const personName = usePeopleNames(page)
  const [looked, setLooked] = useState<Looked | null>(null)
  const doubts = useQuery({
    queryKey: ['event', id, 'doubts'],
    queryFn: () => said(client.estimates.doubts.query({ event: id })) as unknown as Promise<Doubt[]>,
    placeholderData: (before) => before,
  })
  if (doubts.error && !doubts.data)
    return <Trouble title={texts.trouble} error={doubts.error} retry={() => void doubts.refetch()} />
  if (!doubts.data) return <Loading what={texts.what} />
  return (
    <section className="sheet stack" aria-labelledby="doubts">
      <h2 id="doubts">{texts.title}</h2>
      <p>{texts.intro}</p>
      {!looked && pack.data && corrected.note(pack.data)}
      {doubts.data.length === 0 ? (
        <Empty title={texts.none}>
          <p>{texts.noneHow}</p>
        </Empty>
      ) : (
        <ol className="doubts">
          {doubts.data.map((doubt) => (
            <li key={`${doubt.kind} ${doubt.records.join()}`} className="stack">
              <p>
                {doubt.match !== null && (
                  <>
                    <strong>{nameOf(page, doubt.match)}</strong>
                    {'alliance' in doubt && `, ${allianceName(doubt.alliance)}`}:{' '}
                  </>
                )}
                {sentence(page, doubt, personName)}{' '}
                {pack.data && (
                  <button
                    type="button"
                    className="opens"
                    onClick={() => setLooked({ match: doubt.match, team: null, ids: doubt.records })}
                    hidden={doubt.match === null}
                  >
                    {texts.look(doubt.records.length)}
                  </button>
                )}
              </p>
              {'evidence' in doubt && <EvidenceTable page={page} evidence={doubt.evidence} />}
              <Without page={page} records={doubt.records} />
            </li>
          ))}
        </ol>
      )}
      {looked && pack.data && (
        <RecordPanel
          key={JSON.stringify(looked)}
          pack={pack.data}
          looked={looked}
          note={corrected.note(pack.data)}
          onCorrected={corrected.take}
          onClose={() => setLooked(null)}
        />
      )}
    </section>
  )
}

function nameOf({ schedule }: EventPage, id: string): string {
  const found = schedule.matches.find(({ match }) => match.id === id)
  return found ? matchName(found.match) : id
}

const goalName = ({ game }: EventPage, id: string): string => game.goals.find((goal) => goal.id === id)?.name ?? id

function sentence(page: EventPage, doubt: Doubt, personName: (id: string) => string): string {
  const texts = words().doubts
  const goals = (ids: readonly string[]) => listed(ids.map((id) => goalName(page, id)))
  switch (doubt.kind) {
    case 'differs':
      return texts.differs(listed(doubt.teams))
    case 'swapped':
      return texts.swapped(personName(doubt.scout), listed(doubt.teams), goals(doubt.goals))
    case 'wrongRobot':
      return texts.wrongRobot(personName(doubt.scout), listed(doubt.teams), doubt.fits)
    case 'disagree':
      return texts.disagree(listed(doubt.teams), goalName(page, doubt.goal), plain(doubt.low, 1), plain(doubt.high, 1))
    case 'scout': {
      const who = personName(doubt.scout)
      if (doubt.habit === 'swaps') return texts.swaps(who, goals(doubt.goals), doubt.records.length)
      const [pieces, goal] = [points(Math.abs(doubt.perRecord)), goalName(page, doubt.goal)]
      return doubt.perRecord > 0 ? texts.tooFew(who, pieces, goal) : texts.tooMany(who, pieces, goal)
    }
  }
}

function EvidenceTable({ page, evidence }: { page: EventPage; evidence: readonly Evidence[] }) {
  const texts = words().doubts
  const name = (category: Category) =>
    category.kind === 'pieces' ? texts.piecesAt(goalName(page, category.goal)) : texts.categories[category.kind]
  return (
    <div className="scroll" tabIndex={0} role="region" aria-label={texts.evidence}>
      <table className="tide">
        <thead>
          <tr>
            <th scope="col">{texts.category}</th>
            <th scope="col" className="figure">
              {texts.official}
            </th>
            <th scope="col" className="figure">
              {texts.scouted}
            </th>
            <th scope="col" className="figure">
              {texts.usual}
            </th>
          </tr>
        </thead>
        <tbody>
          {evidence.map(({ category, official, scouted, sds }) => (
            <tr key={JSON.stringify(category)}>
              <th scope="row">{name(category)}</th>
              <td className="figure">{plain(official, 1)}</td>
              <td className="figure">{plain(scouted, 1)}</td>
              <td className="figure">{texts.times(plain(Math.abs(sds), 1))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
