import { Button } from '@mantine/core'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { words } from '../../../words/catalogue.ts'
import { nameOfPerson, rowName } from '../matchNames.ts'
import type { Entry, State } from './useHandIn.ts'

/** By shape too, so that the states can not be confused without colour. */
const signs: { [key in State]: string } = { waiting: '◌', new: '●', again: '○', apart: '◆', refused: '✕' }
const states = Object.keys(signs) as State[]

const countOf = (entries: readonly Entry[], state: State) => entries.filter((entry) => entry.state === state).length

/** How many of each state. */
export function Counts({ entries }: { entries: readonly Entry[] }) {
  const texts = words().handin.arrivals
  return states
    .filter((state) => countOf(entries, state) > 0)
    .map((state) => (
      <span key={state} className={`state-${state}`}>
        <span aria-hidden="true">{signs[state]}</span> {texts.counted[state](countOf(entries, state))}
      </span>
    ))
}

/** What came in on this page and what became of it. */
export function Arrivals(props: {
  pack: StandsPack
  entries: readonly Entry[]
  error: Error | null
  busy: boolean
  again(): Promise<boolean>
}) {
  const { pack, entries, error, busy } = props
  const texts = words().handin.arrivals
  const waiting = countOf(entries, 'waiting')
  return (
    <section className="sheet stack" aria-labelledby="arrivals">
      <h2 id="arrivals">{texts.title}</h2>
      {entries.length === 0 && <p className="soft">{texts.none}</p>}
      <p role="status" className="row arrivals-counts">
        <Counts entries={entries} />
      </p>
      {error && (
        <div role="alert" className="stack">
          <p className="loss">{error.message}</p>
          <p>{texts.kept}</p>
        </div>
      )}
      {waiting > 0 && (
        <div>
          <Button loading={busy} onClick={() => void props.again()}>
            {texts.again(waiting)}
          </Button>
        </div>
      )}
      {entries.length > 0 && (
        <div className="scroll" tabIndex={0} role="region" aria-label={texts.table}>
          <table className="tide">
            <thead>
              <tr>
                <th scope="col">{texts.state}</th>
                <th scope="col">{texts.what}</th>
                <th scope="col">{texts.scout}</th>
              </tr>
            </thead>
            <tbody>
              {entries.map(({ row, state, why }) => (
                <tr key={row.id}>
                  <td className={`state-${state}`}>
                    <span aria-hidden="true">{signs[state]}</span> {texts.states[state]}
                    {why && <span className="small arrivals-why">{why}</span>}
                  </td>
                  <td>{rowName(pack, row)}</td>
                  <td>{nameOfPerson(pack, row.scout)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  )
}
