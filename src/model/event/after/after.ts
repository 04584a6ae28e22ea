import type { DecisionRecord } from '../../documents/records.ts'
import type { Game } from '../../documents/types.ts'
import type { Estimate } from '../../scouting/estimates/index.ts'
import type { FieldReport } from '../../scouting/field/index.ts'
import type { Counting } from '../../scouting/record/index.ts'
import type { Change, Match, Observation, Result } from '../../scouting/types.ts'
import type { EventRanking } from '../ranking/types.ts'
import { afterForecasts, afterMatches } from './forecasts.ts'
import { lossesOf, matchesOf, missesOf } from './lost.ts'
import { questionsOf } from './questions.ts'
import type { AfterDecision, AfterLoss, AfterReport } from './types.ts'

export interface AfterRequest {
  game: Game
  team: string
  matches: readonly Match[]
  results: readonly Result[]
  ranking: EventRanking
  /** Forecasts by match, as they count. */
  counting: readonly Counting[]
  /** Records that count. */
  watched: readonly { observation: Observation; team: string }[]
  changes: readonly Change[]
  /** Against the design, its matches alone. */
  field: FieldReport | null
  /** Expected points of a match by what was seen. */
  points: Estimate | null
  decisions: readonly DecisionRecord[]
  /** Id of the design that is looked at. */
  design: string | null
}

/** What was predicted of a team at an event, what was seen, and what that asks. */
export function afterEvent(request: AfterRequest): AfterReport {
  const { game, team, ranking, field, points, decisions, design } = request
  const own = matchesOf(team, request)
  const row = ranking.rows.find((each) => each.team === team)
  const matches = afterMatches(team, request)
  const absent = own.filter(({ records }) => records.every((record) => record.absent)).length
  const evidence = {
    team,
    ranking:
      row && row.played > 0
        ? { rank: row.rank, of: ranking.rows.length, played: row.played, won: row.won, tied: row.tied, lost: row.lost }
        : null,
    matches,
    forecasts: afterForecasts(matches),
    watched: own.length - absent,
    absent,
    losses: [...slower(field), ...lossesOf(game, own)].sort((a, b) => b.seconds - a.seconds),
    misses: missesOf(game, own),
    field: fieldSaid(field),
    points,
    decisions: decisions
      .filter(({ snapshot }) => snapshot.game.id === game.id)
      .map((each) => decisionSaid(each, design)),
    changes: request.changes
      .filter((change) => change.team === team)
      .map(({ afterMatch, note }) => ({ afterMatch, note: note ?? null })),
  }
  return { ...evidence, questions: questionsOf(evidence) }
}

/** Seconds a match that longer trips took: the difference of a trip times the trips of a match. */
function slower(field: FieldReport | null): AfterLoss[] {
  if (!field?.whole) return []
  const runs = field.runs.filter(({ kind, trips }) => kind === 'match' && trips > 0)
  const trips = runs.reduce((sum, run) => sum + run.trips, 0)
  if (runs.length === 0) return []
  const seconds = (field.whole.difference.mean * trips) / runs.length
  const longer = runs.filter((run) => (run.field ?? 0) > (run.model ?? 0)).length
  return [{ kind: 'slower', seconds, matches: longer }]
}

function fieldSaid(field: FieldReport | null): AfterReport['field'] {
  if (!field?.whole) return null
  const { trips, model, field: seen, difference } = field.whole
  return {
    trips,
    model: model.mean,
    seen: seen.mean,
    difference: difference.mean,
    interval95: difference.interval95,
    legs: field.legs.map((each) => ({
      leg: each.leg,
      difference: each.difference.mean,
      share: each.share,
      trips: each.trips,
    })),
  }
}

function decisionSaid(record: DecisionRecord, design: string | null): AfterDecision {
  const { id, name, decidedOn, chosen, snapshot, checks = [], checkAtEvent, wouldChange } = record
  const option = snapshot.options.find((each) => each.id === chosen)
  const summary = snapshot.result.options.find((each) => each.id === chosen)
  return {
    ...{ id, name, decidedOn, checks, checkAtEvent, wouldChange },
    chosen: option?.name ?? chosen,
    ofDesign: design !== null && option?.robot.id === design,
    expected: { mean: summary?.mean ?? 0, p10: summary?.p10 ?? 0, p90: summary?.p90 ?? 0 },
  }
}
