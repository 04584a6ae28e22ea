import { checkQuickSheet } from '../../src/model/documents/checkQuickSheet.ts'
import type { QuickSheetRecord, QuickWay } from '../../src/model/documents/quickSheet.ts'
import type { Game } from '../../src/model/documents/types.ts'
import { ModelError, type Problem } from '../../src/model/errors.ts'
import { Planner } from '../../src/model/plan/index.ts'
import { atStrength, onePerPlace, strengthsAtFirst, type WayResult, wayResult } from '../../src/model/sheet/index.ts'
import type { SheetAsk, WayAnswer } from './protocol.ts'

interface Known {
  game: Game
  planner: Planner
  results: Map<string, WayAnswer>
}

const kept = new Map<string, Known>()

/** Planners and results per game: the rules of a sheet and of its readings, the last eight. */
function knownFor(game: Game): Known {
  const key = JSON.stringify(game)
  const small = onePerPlace(game)
  const known = kept.get(key) ?? { game: small, planner: new Planner(small), results: new Map() }
  kept.delete(key)
  kept.set(key, known)
  if (kept.size > 8) kept.delete(kept.keys().next().value!)
  return known
}

function problemOf(game: Game, way: QuickWay): Problem | null {
  const alone: QuickSheetRecord = {
    format: 1,
    id: 'alone',
    name: '',
    game: { id: game.id, revision: 1 },
    strengths: strengthsAtFirst,
    ways: [way],
  }
  return checkQuickSheet(game, alone)[0] ?? null
}

/** What neither the name nor what others believe changes. */
const essence = ({ id: _, name: __, ...way }: QuickWay): QuickWay => ({ ...way, id: 'way', name: '' })

function resultOf({ game, planner, results }: Known, way: QuickWay): WayAnswer {
  const key = JSON.stringify(way)
  const found = results.get(key)
  if (found) return found
  const computed = computedOf(game, planner, way)
  if (results.size > 400) results.delete(results.keys().next().value!)
  results.set(key, computed)
  return computed
}

function computedOf(game: Game, planner: Planner, way: QuickWay): WayAnswer {
  const problem = problemOf(game, way)
  if (problem) return { problem }
  try {
    const result: WayResult = wayResult(planner, game, way)
    return { result }
  } catch (error) {
    if (error instanceof ModelError) return { problem: { message: error.message, said: error.said } }
    throw error
  }
}

/** Every way at every strength under every set of rules asked for; what was computed before is not computed again. */
export function sheetAnswer({ games, ways, strengths }: SheetAsk): WayAnswer[][][] {
  return games.map((game) => {
    const known = knownFor(game)
    return strengths.map((strength) => ways.map((way) => resultOf(known, essence(atStrength(way, strength)))))
  })
}
