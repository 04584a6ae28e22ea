import { useQuery } from '@tanstack/react-query'
import { type ReactNode, useState } from 'react'
import type { Estimate } from '../../../../src/model/scouting/estimates/types.ts'
import { client, said } from '../../../data/api.ts'
import { Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { listed, percent, points } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { between } from '../estimates/between.ts'
import { allianceName, matchName } from '../names.ts'

type Answer = Awaited<ReturnType<typeof client.estimates.without.mutate>>

/** What would be believed and forecast without doubted records: asked for with a press, because it plays matches. */
export function Without({ page, records }: { page: EventPage; records: readonly string[] }) {
  const texts = words().doubts.without
  const [open, setOpen] = useState(false)
  const event = page.event.id
  const found = useQuery({
    // With the doubts, so that it is asked for anew when records change.
    queryKey: ['event', event, 'doubts', 'without', records.join()],
    queryFn: () => said(client.estimates.without.mutate({ event, records: [...records] })) as Promise<Answer>,
    enabled: open,
  })
  if (!open)
    return (
      <p className="no-print">
        <button type="button" className="opens" onClick={() => setOpen(true)}>
          {texts.ask(records.length)}
        </button>
      </p>
    )
  if (found.error && !found.data)
    return <Trouble title={texts.trouble} error={found.error} retry={() => void found.refetch()} />
  return found.data ? <Answered page={page} answer={found.data} /> : <Loading what={texts.what} />
}

const numbers = ['points', 'attempts', 'finishPoints', 'autonomousPoints'] as const

function Answered({ page, answer }: { page: EventPage; answer: Answer }) {
  const texts = words().doubts.without
  const { columns } = words().estimates
  return (
    <div className="stack">
      {answer.teams.map(({ team, with: now, without }) => (
        <WithAndWithout
          key={team}
          caption={texts.team(team, now.matches, without.matches)}
          rows={numbers.map((what) => ({
            name: columns[what],
            now: <Believed of={now[what]} />,
            other: <Believed of={without[what]} />,
          }))}
        />
      ))}
      {answer.matches.length === 0 ? (
        <p>{texts.noneComing}</p>
      ) : (
        <WithAndWithout
          caption={texts.matches(answer.matches.length, answer.coming)}
          rows={answer.matches.flatMap(({ match, alliance, with: now, without }) => {
            const side = `${nameOf(page, match)}, ${allianceName(alliance)}`
            return [
              { name: texts.wins(side), now: percent(now.win), other: percent(without.win) },
              { name: texts.score(side), now: points(now.score), other: points(without.score) },
            ]
          })}
        />
      )}
      <p className="soft small">{texts.how(listed(answer.teams.map(({ team }) => team)))}</p>
    </div>
  )
}

function Believed({ of }: { of: Pick<Estimate, 'mean' | 'interval80'> }) {
  return (
    <>
      {points(of.mean)}
      <span className="slot-mark">{between(of, points)}</span>
    </>
  )
}

function nameOf({ schedule }: EventPage, id: string): string {
  const found = schedule.matches.find(({ match }) => match.id === id)
  return found ? matchName(found.match) : id
}

function WithAndWithout(props: { caption: string; rows: { name: string; now: ReactNode; other: ReactNode }[] }) {
  const texts = words().doubts.without
  return (
    <>
      <h3>{props.caption}</h3>
      <div className="scroll" tabIndex={0} role="region" aria-label={props.caption}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{words().doubts.category}</th>
              <th scope="col" className="figure">
                {texts.with}
              </th>
              <th scope="col" className="figure">
                {texts.without}
              </th>
            </tr>
          </thead>
          <tbody>
            {props.rows.map(({ name, now, other }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td className="figure">{now}</td>
                <td className="figure">{other}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  )
}
