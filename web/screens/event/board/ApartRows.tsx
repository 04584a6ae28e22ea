import { Button } from '@mantine/core'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { api } from '../../../data/board.ts'
import { words } from '../../../words/catalogue.ts'
import { rowName } from '../matchNames.ts'
import type { Apart } from './useBoard.ts'

const decisions = ['kept', 'replaced', 'setAside'] as const

/** Rows that wait for a decision, each beside what came first under its id. */
export function ApartRows(props: { pack: StandsPack; apart: readonly Apart[]; event: string }) {
  const texts = words().board
  const open = props.apart.filter(({ resolution }) => resolution === null)
  return (
    <section className="sheet stack" aria-labelledby="apart">
      <h2 id="apart">{texts.apart}</h2>
      {open.length === 0 && <p className="soft">{texts.nothingApart}</p>}
      {open.map((each) => (
        <ApartRow key={each.arrival} pack={props.pack} apart={each} event={props.event} />
      ))}
    </section>
  )
}

function ApartRow(props: { pack: StandsPack; apart: Apart; event: string }) {
  const { pack, apart, event } = props
  const texts = words().board
  const queries = useQueryClient()
  const decide = useMutation({
    mutationFn: (resolution: (typeof decisions)[number]) => api.resolve({ event, arrival: apart.arrival, resolution }),
    onSettled: () => queries.invalidateQueries({ queryKey: ['apart', event] }),
  })
  const sides = [
    { title: texts.ours, row: apart.ours },
    { title: texts.theirs, row: apart.row },
  ]
  return (
    <article className="stack board-apart">
      <h3>{rowName(pack, apart.row)}</h3>
      <p>{texts.reasons[apart.reason]}</p>
      <div className="board-sides">
        {sides.map(({ title, row }) => (
          <div key={title} className="stack">
            <h4>{title}</h4>
            {row ? <pre className="small scroll">{JSON.stringify(row.body, null, 1)}</pre> : <p>{texts.nothingOurs}</p>}
          </div>
        ))}
      </div>
      {decide.error && (
        <p role="alert" className="loss">
          {decide.error.message}
        </p>
      )}
      <div className="row">
        {decisions.map((each) => (
          <Button key={each} variant="default" loading={decide.isPending} onClick={() => decide.mutate(each)}>
            {texts.decisions[each]}
          </Button>
        ))}
      </div>
    </article>
  )
}
