import { NativeSelect } from '@mantine/core'
import type { Stored } from '../../data/documents.ts'
import { finishWords } from '../../words/explain.ts'

/** Which way to play the points are computed for. */
export function WayToPlay(props: { ways: Stored<'option'>[]; chosen: string | null; onChoose(id: string): void }) {
  const chosen = props.ways.find(({ id }) => id === props.chosen)
  if (props.ways.length === 0)
    return (
      <p className="soft">
        No way to play is stored for this design yet: the points are those of a robot that does all that it can.
      </p>
    )
  return (
    <div className="row">
      <NativeSelect
        label="Played as"
        value={props.chosen ?? ''}
        data={props.ways.map(({ id, name }) => ({ value: id, label: name }))}
        onChange={(event) => props.onChoose(event.currentTarget.value)}
      />
      {chosen && <p className="soft small">Endgame {finishWords(chosen.body.option)}.</p>}
    </div>
  )
}
