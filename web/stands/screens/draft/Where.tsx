import type { Point } from '../../../../src/model/documents/types.ts'
import { FieldDrawing, type Mark, marksOf } from '../../parts/FieldDrawing.tsx'
import type { Desk } from '../../record/useDraft.ts'
import { useWords } from '../../words/catalogue.ts'
import { useView } from './view.ts'

/** Where the next tap happens, for whoever wants to say it. */
export function Where(props: { desk: Desk; where: Point | null; touched(at: Point): void }) {
  const texts = useWords().running
  const { draft, game } = props.desk
  const view = useView(draft.about)
  const marks: Mark[] = [
    ...marksOf(game),
    ...(props.where ? [{ id: ' where', at: props.where, sign: '', shape: 'robot', strong: true } as const] : []),
  ]
  return (
    <details className="where" open={innerHeight > (draft.about.origin === 'live' ? 760 : 900)}>
      <summary>{props.where ? texts.whereSet : texts.where}</summary>
      <FieldDrawing game={game} view={view} marks={marks} touched={props.touched} label={texts.whereHelp} />
    </details>
  )
}
