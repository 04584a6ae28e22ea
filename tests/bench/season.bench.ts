import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Game, Option } from '../../src/model/documents/types.ts'
import { Calibrator, type SeasonRequest, seasonReport } from '../../src/model/match/scores/index.ts'
import { Uniforms } from '../../src/model/random/index.ts'
import { projectRoot } from '../../src/root.ts'
import { type BenchEntry, milliseconds } from './entry.ts'

const { game, options } = JSON.parse(
  readFileSync(join(projectRoot(), 'tests/reference/reference-breakwater.json'), 'utf8'),
) as { game: Game; options: Option[] }

/** 80 matches of 14 teams, each of six drawn at random. */
function schedule(): SeasonRequest {
  const uniforms = new Uniforms(80)
  const matches = Array.from({ length: 80 }, (_, k) => {
    const drawn = options.map(({ id }) => ({ id, at: uniforms.next() })).sort((a, b) => a.at - b.at)
    const six = drawn.slice(0, 6).map(({ id }) => id)
    return { id: `${k + 1}`, ours: six.slice(0, 3), theirs: six.slice(3) }
  })
  const teams = options.map((option) => ({ team: option.id, draws: [option] }))
  return { game, teams, matches, seasons: 10_000, seed: 1, replicates: 2000, precision: 0.005 }
}

/** 80 matches in 10,000 seasons, with their chances and errors, once the matches have been simulated. */
const season: BenchEntry = {
  name: 'season.schedule',
  unit: 'ms',
  better: 'lower',
  open: () => {
    const request = schedule()
    const calibrator = new Calibrator(request)
    const calibrations = request.matches.map((_, number) => calibrator.calibrate(number))
    seasonReport(request, calibrations)
    let seed = 1
    return { run: () => milliseconds(() => seasonReport({ ...request, seed: seed++ }, calibrations)) }
  },
}

export default [season]
