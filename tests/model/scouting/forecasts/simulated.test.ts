import { expect, it } from 'vitest'
import { simulate } from '../../../../src/model/match/index.ts'
import { EventEstimates } from '../../../../src/model/scouting/estimates/index.ts'
import { observedRobot } from '../../../../src/model/scouting/observed/index.ts'
import { inLongForm } from '../../../browser/longForm.ts'
import { shapeOf } from '../estimates/coverage.ts'
import { game, simulatedEvent } from '../estimates/simulated.ts'
import { clusteredMean, recalibration, type Scored } from './clustered.ts'

const [events, draws, replicates] = [200, 50, 500]

/** As a forecast is made for a team: what was seen becomes robots with draws, which the simulator plays. */
function calledIn(event: number): Scored[] {
  const { seen, coming } = simulatedEvent(shapeOf(event, { teams: 24, matches: 5, truthIn: 1 }))
  const estimates = new EventEstimates({ game, teams: [...seen.keys()], seen })
  return coming.map(({ ours, theirs, lead }) => {
    const robots = (side: readonly string[]) => side.map((team) => observedRobot(estimates, team, { draws }).option)
    const { win, tie } = simulate({ game, ours: robots(ours), theirs: robots(theirs), replicates, seed: event })
    const won = replicates * (win.probability + tie.probability / 2)
    return { event, p: (won + 1) / (replicates + 2), y: lead > 0 ? 1 : lead < 0 ? 0 : 0.5 }
  })
}

it.runIf(inLongForm)(
  'chances to win, of robots seen in simulated matches and played again as they were seen, are as often right as they say',
  { timeout: 3_600_000 },
  () => {
    const all = Array.from({ length: events }, (_, event) => calledIn(event)).flat()
    const { intercept, slope } = recalibration(all)
    const coin = clusteredMean(all.map(({ event, p, y }) => ({ event, value: (p - y) ** 2 - (0.5 - y) ** 2 })))
    const found = JSON.stringify({ intercept, slope, coin })
    expect(Math.abs(intercept.value), found).toBeLessThan(1.96 * intercept.error)
    expect(Math.abs(slope.value - 1), found).toBeLessThan(1.96 * slope.error)
    expect(coin.value + 1.96 * coin.error, found).toBeLessThan(0)
  },
)
