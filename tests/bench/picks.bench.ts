import { once } from 'node:events'
import { Worker } from 'node:worker_threads'
import {
  enoughRounds,
  type Lot,
  matchesEach,
  type Played,
  pickOrder,
  Refinement,
  refineTasks,
  Selection,
  type SelectionRules,
  Sibling,
  Strengths,
  samplePairings,
  seedsOf,
  spreadsOf,
} from '../../src/model/picks/index.ts'
import { type BenchEntry, milliseconds } from './entry.ts'
import type { Order } from './picks.worker.ts'
import { game, storedEvent, toCome } from './picksEvent.ts'

const rules: SelectionRules = {
  alliances: 8,
  size: 4,
  serpentine: true,
  captainsInvitable: true,
  afterDeclining: 'captain',
}
const matchesOfSample = 64

type Event = ReturnType<typeof storedEvent>

/** From what is stored of an event to what the sibling says of any alliances. */
function siblingOf({ teams, playing }: Event, seed: number): Strengths {
  const lots = samplePairings({ teams, seed }).map((pairing, k): Lot => {
    const request = { ...pairing, seed: 100 * seed + k, from: 0, to: matchesOfSample }
    return { pairing, played: playing.play(request) }
  })
  return new Strengths(new Sibling(game, teams, lots))
}

/** The fourth captain's order before anything was called out. */
function firstOrder(event: Event, strengths: Strengths) {
  const selection = Selection.begin(rules, event.names)
  const us = event.names[3] as string
  return { us, selection, worked: pickOrder({ game, strengths, selection, us }) }
}

/** Two threads that know the event. */
async function threads() {
  const workers = [0, 1].map(() => new Worker(new URL('./picks.worker.js', import.meta.url)))
  await Promise.all(workers.map((worker) => once(worker, 'message')))
  const ask = async <Answer>(orders: readonly Order[]): Promise<Answer[]> =>
    Promise.all(
      workers.map(async (worker, k) => {
        worker.postMessage(orders[k])
        return (await once(worker, 'message'))[0] as Answer
      }),
    )
  const close = async () => {
    await Promise.all(workers.map((worker) => worker.terminate()))
  }
  return { ask, close }
}

const halves = <Of>(all: readonly Of[]): [Of[], Of[]] => [
  all.filter((_, k) => k % 2 === 0),
  all.filter((_, k) => k % 2 === 1),
]

const first: BenchEntry = {
  // From stored estimates and robots to the first order with its intervals and errors, the sample of matches included.
  name: 'picks.first',
  unit: 'ms',
  better: 'lower',
  open: () => {
    const event = storedEvent()
    let seed = 1
    firstOrder(event, siblingOf(event, seed))
    return { run: () => milliseconds(() => firstOrder(event, siblingOf(event, ++seed))) }
  },
}

const reorder: BenchEntry = {
  // After a pick: the order that goes on from the one before, a fresh pick each time.
  name: 'picks.reorder',
  unit: 'ms',
  better: 'lower',
  runs: 9,
  open: () => {
    const event = storedEvent()
    const strengths = siblingOf(event, 1)
    const { us, selection, worked } = firstOrder(event, strengths)
    let turn = 0
    const run = () => {
      const team = worked.order.choices[turn++ % worked.order.choices.length]?.team as string
      const after = selection.take({ kind: 'accepts', team })
      pickOrder({ game, strengths, selection: after, us, since: worked })
    }
    run()
    return { run: () => milliseconds(run) }
  },
}

const refined: BenchEntry = {
  // The same with the first 24 simulated by two threads, until gains are known to about half a percentage point.
  name: 'picks.60',
  unit: 'ms',
  better: 'lower',
  open: async () => {
    const event = storedEvent()
    const { ask, close } = await threads()
    let seed = 1
    const run = async () => {
      const strengths = siblingOf(event, ++seed)
      const { worked } = firstOrder(event, strengths)
      const refinement = new Refinement(worked)
      const shares = halves(refineTasks(worked, strengths))
      for (let round = 0; round < enoughRounds; round++) {
        const orders = shares.map((tasks): Order => ({ kind: 'refine', tasks, round, seed }))
        const answers = await ask<Uint8Array[]>(orders)
        for (const [k, outcomes] of answers.entries())
          for (const [t, each] of outcomes.entries())
            refinement.add(shares[k]?.[t]?.choice as number, { round, outcomes: each })
      }
      if (!refinement.order().choices[0]?.simulated) throw new Error('nothing was refined')
    }
    return { run: () => milliseconds(run), close }
  },
}

const seeds: BenchEntry = {
  // 80 matches to come of 60 teams: 500 simulated of each by two threads, then 10,000 seasons.
  name: 'seeds.60',
  unit: 'ms',
  better: 'lower',
  open: async () => {
    const event = storedEvent()
    const { ask, close } = await threads()
    const pairings = toCome(event.teams)
    const slots = (teams: readonly string[]) => teams.map((team) => ({ team, counts: true }))
    const matches = pairings.map(({ ours, theirs }, k) => ({ id: `${k}`, ours: slots(ours), theirs: slots(theirs) }))
    const standings = event.names.map((team) => ({ team, played: 0, sums: [] }))
    let seed = 1
    const run = async () => {
      seed++
      const parts = halves(
        pairings.map((pairing, k) => ({ ...pairing, seed: 1000 * seed + k, from: 0, to: matchesEach })),
      )
      const played = await ask<Played[]>(parts.map((requests): Order => ({ kind: 'play', requests })))
      const lots = pairings.map((pairing, k): Lot => ({ pairing, played: played[k % 2]?.[k >> 1] as Played }))
      const spreads = spreadsOf(game, event.teams, lots)
      const us = event.names[3] as string
      const report = seedsOf({ game, standings, matches, seasons: 10_000, seed, us }, spreads)
      if (report.teams.length !== 60) throw new Error('a team is missing')
    }
    return { run: () => milliseconds(run), close }
  },
}

export default [first, reorder, refined, seeds]
