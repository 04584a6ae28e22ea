import { Button } from '@mantine/core'
import type { SelectionLog } from '../../../data/selection.ts'
import { words } from '../../../words/catalogue.ts'
import { moment } from '../../../words/format.ts'
import type { PicksGround } from './usePicksEvent.ts'

/** How old it is, what is still on its way, and what somebody else was quicker with. */
export function Notes({ log, ground }: { log: SelectionLog; ground: PicksGround }) {
  const { kept, asking, pack } = ground
  const texts = words().picks
  const { clash, waiting } = log
  return (
    <>
      <p role="status" className="no-print small soft">
        {(kept ? texts.keptSince : asking ? texts.askingSince : texts.asOf)(moment(pack.madeAt))}
      </p>
      {waiting > 0 && !clash && (
        <p role="status" className="no-print">
          {texts.waiting(waiting)}
        </p>
      )}
      {clash && (
        <div className="sheet stack no-print" role="alert">
          <h2>{texts.clash}</h2>
          <p>{clash.message}</p>
          <ul>
            {clash.lines.map(({ id, line }) => (
              <li key={id}>
                {line.kind === 'called' ? texts.said[line.step.kind](line.step.team) : texts.lines[line.kind]}
              </li>
            ))}
          </ul>
          <p>{texts.clashHow}</p>
          <div className="row">
            <Button onClick={() => log.settle('after')}>{texts.writeAfter}</Button>
            <Button variant="default" onClick={() => log.settle('forget')}>
              {texts.discard}
            </Button>
          </div>
        </div>
      )}
    </>
  )
}
