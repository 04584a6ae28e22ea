import { useMemo } from 'react'
import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import type { Option } from '../../../src/model/documents/types.ts'
import { keptAir } from '../../../src/model/timing/air/keptAir.ts'
import { words } from '../../words/catalogue.ts'
import { useModel } from '../../worker/useModel.ts'
import { lossWords } from '../designs/air/airWords.ts'
import { AirSentence } from '../tradeoffs/AirNotes.tsx'

type Snapshot = DecisionRecord['snapshot']

/** When an option's stored air runs out, and what that costs: as kept with the record, so that it is there when the page is printed. */
export function AirLines({ snapshot }: { snapshot: Snapshot }) {
  const stored = snapshot.options.filter(({ robot }) => robot.air)
  return stored.map((option) => {
    const kept = snapshot.air?.find((each) => each.option === option.id)
    if (!kept) return <Computed key={option.id} snapshot={snapshot} option={option} />
    const said = lossWords(kept, snapshot.game.clock.teleop)
    return said && <AirSentence key={option.id} option={option} said={said} />
  })
}

/** A record from before air was kept: worked out now, and until then said to be so, on paper too. */
function Computed({ snapshot, option }: { snapshot: Snapshot; option: Option }) {
  const { game } = snapshot
  const { data, error } = useModel(
    'airPlan',
    useMemo(() => ({ game, option }), [game, option]),
  )
  const texts = words().decisions.air
  const said = data ? lossWords(keptAir(option.id, data), game.clock.teleop) : error ? texts.failed : texts.computing
  return said && <AirSentence option={option} said={said} />
}
