import { randomUUID } from 'node:crypto'
import { rankEvent } from '../../model/event/index.ts'
import type { Lot, Pairing, Played } from '../../model/picks/scores/index.ts'
import { comingMatches, matchesEach, type SeedMatch, type SeedsReport } from '../../model/picks/seeds/index.ts'
import { inputOf } from '../estimates/estimates.ts'
import { keeper } from '../estimates/keep.ts'
import type { Context } from '../trpc.ts'
import { type RatedEvent, ratedIn } from './rated.ts'

/** Seasons that are drawn. */
export const seasons = 10_000
/** The same for everybody who asks, so that ranks change only with what is known. */
const seed = 1

/** Simulated matches that one thread makes at a time: some tenths of a second, so that others get their turn between. */
const atOnce = 4
/** Threads that one question takes at most. */
const mostShares = 2

interface Work {
  rated: RatedEvent
  coming: SeedMatch[]
  /** Under which the threads keep these robots. */
  mark: string
  /** By coming match. */
  lots: (Promise<Lot> | undefined)[]
  done: number
  /** By team. */
  reports: Map<string, Promise<SeedsReport>>
}

const kept = keeper<Work>()

type Asking = Pick<Context, 'workspace' | 'pool' | 'signal'>

/** What is worked out of an event's seeds, for as long as nothing new is known of it. */
async function workOf(ctx: Asking, event: string): Promise<Work> {
  const { input, known, log } = await inputOf(ctx, event)
  const results = await ctx.workspace.events.results(event)
  const over = new Set(results.flatMap(({ match, result }) => (result ? [match] : [])))
  return kept(log.of, known, async () => {
    const coming = comingMatches(input.matches, over)
    return {
      rated: await ratedIn(ctx, event),
      coming,
      mark: randomUUID(),
      lots: coming.map(() => undefined),
      done: 0,
      reports: new Map(),
    }
  })
}

/** How far it is: simulated matches to come, of how many. */
export interface SeedsProgress {
  done: number
  total: number
}

/**
 * Simulates up to `most` of the matches to come that have not been yet, by threads at once. What is done stays done, whoever goes
 * away meanwhile.
 */
export async function seedLotsIn(
  ctx: Asking,
  { event, most }: { event: string; most: number },
): Promise<SeedsProgress> {
  const work = await workOf(ctx, event)
  const missing = work.coming.flatMap((_, k) => (work.lots[k] ? [] : [k])).slice(0, most)
  await simulate(ctx, work, missing)
  // Who asks meanwhile for the same ones waits for them too.
  if (missing.length === 0) await Promise.all(work.lots)
  return { done: work.done, total: work.coming.length }
}

async function simulate(ctx: Asking, work: Work, places: readonly number[]): Promise<void> {
  const parts: number[][] = []
  for (let from = 0; from < places.length; from += atOnce) parts.push(places.slice(from, from + atOnce))
  let next = 0
  const share = async () => {
    for (let part = parts[next++]; part; part = parts[next++]) {
      ctx.signal.throwIfAborted()
      await lotsOf(ctx, work, part)
    }
  }
  await Promise.all(Array.from({ length: Math.min(mostShares, ctx.pool.threads) }, share))
}

async function lotsOf({ pool }: Asking, work: Work, places: readonly number[]): Promise<void> {
  const { rated, coming, mark } = work
  const pairings = places.map((k): Pairing => {
    const { ours, theirs } = coming[k] as SeedMatch
    return { ours: ours.map(({ team }) => team), theirs: theirs.map(({ team }) => team) }
  })
  const playing = new Set(pairings.flatMap(({ ours, theirs }) => [...ours, ...theirs]))
  const teams = rated.teams.filter(({ team }) => playing.has(team)).map(({ team, option }) => ({ team, option }))
  const requests = pairings.map((pairing, k) => ({
    ...pairing,
    seed: 1000 * seed + (places[k] as number),
    from: 0,
    to: matchesEach,
  }))
  // Whoever asked first may go: the others wait for the same answer.
  const { signal } = new AbortController()
  const field = { game: rated.game, level: rated.level, teams }
  const all = pool.run('seedLots', { mark, field, requests }, signal)
  for (const [k, place] of places.entries()) {
    const lot = all.then((played): Lot => ({ pairing: pairings[k] as Pairing, played: played[k] as Played }))
    work.lots[place] = lot
    // A failure is not kept.
    lot.then(
      () => work.done++,
      () => {
        work.lots[place] = undefined
      },
    )
  }
  await all
}

export interface SeedsAnswer {
  /** Matches that count in the ranking so far, and that are to come. */
  counted: number
  coming: number
  records: number
  report: SeedsReport
}

/** Where teams end after the matches to come, and what each of ours is worth. */
export async function seedsIn(ctx: Asking, { event, team }: { event: string; team: string }): Promise<SeedsAnswer> {
  const work = await workOf(ctx, event)
  const missing = work.coming.flatMap((_, k) => (work.lots[k] ? [] : [k]))
  await simulate(ctx, work, missing)
  const { input, body } = await inputOf(ctx, event)
  const results = (await ctx.workspace.events.results(event)).flatMap(({ result }) => result ?? [])
  const { rated, coming, reports } = work
  const ranking = rankEvent({ game: rated.game, event: body, matches: input.matches, results, seed: 1 })
  let report = reports.get(team)
  if (!report) {
    report = Promise.all(work.lots as Promise<Lot>[]).then((lots) =>
      ctx.pool.run(
        'seeds',
        {
          request: {
            game: rated.game,
            standings: ranking.rows.map(({ team: each, played, sums }) => ({ team: each, played, sums })),
            matches: coming,
            // Where nothing is to come, nothing varies but the lot.
            seasons: coming.length > 0 ? seasons : 1,
            seed,
            us: team,
          },
          teams: rated.teams.map(({ team: each, rating, met }) => ({ team: each, rating, met })),
          lots,
        },
        new AbortController().signal,
      ),
    )
    reports.set(team, report)
    report.catch(() => reports.delete(team))
  }
  return { counted: ranking.counted, coming: coming.length, records: rated.records, report: await report }
}
