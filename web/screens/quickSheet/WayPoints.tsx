import type { QuickSheetRecord } from '../../../src/model/documents/quickSheet.ts'
import type { Game } from '../../../src/model/documents/types.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { points } from '../../words/format.ts'
import type { WayAnswer } from '../../worker/protocol.ts'
import { explainWay } from './explainWay.ts'

/** The points of a way at some strength or under some reading, which open to how they came about. */
export function WayPoints(props: {
  game: Game
  sheet: QuickSheetRecord
  id: string
  answers: readonly WayAnswer[]
  under: string
}) {
  const { game, sheet, id, answers, under } = props
  const index = sheet.ways.findIndex((way) => way.id === id)
  const [way, answer] = [sheet.ways[index], answers[index]]
  if (!way || !answer || !('result' in answer)) return '–'
  const { result } = answer
  return (
    <CameAbout explain={() => explainWay({ game, sheet, way, result, revision: sheet.game.revision, under })}>
      {points(result.points)}
    </CameAbout>
  )
}
