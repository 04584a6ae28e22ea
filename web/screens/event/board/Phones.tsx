import { Button } from '@mantine/core'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link } from 'wouter'
import { api } from '../../../data/board.ts'
import { words } from '../../../words/catalogue.ts'
import { moment } from '../../../words/format.ts'
import type { Board } from './useBoard.ts'

/** A phone in the stands asks for news every minute or so; after ten it has no network, or is put away (s). */
const longSilent = 600

/** Those that hold records which may not come by themselves. */
export const silentHolders = ({ phones }: Board) =>
  phones.filter(({ silent, unsent, signedOut }) => (silent >= longSilent || signedOut) && unsent > 0)

/** The phones: what each still holds, and how a rehearsal goes on it. */
export function Phones(props: { event: string; board: Board; revision: number }) {
  const { event, board, revision } = props
  const texts = words().board
  const { drill } = board
  const running = drill !== null && drill.endedAt === null
  const queries = useQueryClient()
  const change = useMutation({
    mutationFn: () => (running ? api.endDrill(event, drill.id) : api.startDrill(event)),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['board', event] }),
  })
  return (
    <section className="sheet stack" aria-labelledby="phones">
      <h2 id="phones">{texts.phones}</h2>
      {board.phones.length === 0 ? <p className="soft">{texts.noPhones}</p> : null}
      {board.phones.length > 0 && (
        <div className="scroll" tabIndex={0} role="region" aria-label={words().event.tableOf(texts.phones)}>
          <table className="tide board-phones">
            <thead>
              <tr>
                <th scope="col">{texts.phone}</th>
                <th scope="col">{texts.scout}</th>
                <th scope="col">{texts.heard}</th>
                <th scope="col">{texts.unsent}</th>
                <th scope="col">{texts.held}</th>
                {drill && <th scope="col">{texts.drill}</th>}
              </tr>
            </thead>
            <tbody>
              {board.phones.map((phone) => (
                <tr key={phone.device}>
                  <th scope="row">{phone.name}</th>
                  <td>{phone.nickname}</td>
                  <td data-label={texts.heard}>
                    {phone.signedOut ? (
                      <span className="loss">{texts.signedOut(moment(phone.lastSeenAt))}</span>
                    ) : phone.silent < longSilent ? (
                      moment(phone.lastSeenAt)
                    ) : (
                      <span className="loss">
                        {texts.silent(Math.round(phone.silent / 60), moment(phone.lastSeenAt))}
                      </span>
                    )}
                    {phone.form !== null && phone.form < revision && (
                      <span className="slot-mark">{texts.oldForm(phone.form, revision)}</span>
                    )}
                  </td>
                  <td data-label={texts.unsent}>{phone.unsent > 0 ? texts.holds(phone.unsent) : texts.holdsNothing}</td>
                  <td data-label={texts.held}>{phone.held}</td>
                  {drill && <td data-label={texts.drill}>{phone.drill && texts.drills[phone.drill]}</td>}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {silentHolders(board).length > 0 && (
        <p>
          {texts.silentHolds} <Link href={`/event/${event}/hand-in`}>{texts.toHandIn}</Link>
        </p>
      )}
      <p>{running ? texts.drillRuns : texts.drillHelp}</p>
      {change.error && (
        <p role="alert" className="loss">
          {change.error.message}
        </p>
      )}
      <div>
        <Button variant="default" loading={change.isPending} onClick={() => change.mutate()}>
          {running ? texts.endDrill : texts.startDrill}
        </Button>
      </div>
    </section>
  )
}
