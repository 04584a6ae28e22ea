import { Uniforms } from '../../src/model/random/index.ts'
import type { Happening, Match, Observation, RecordDocuments, RecordKind, Row } from '../../src/model/scouting/types.ts'
import { game } from '../game.ts'
import type { Performance, PlayedMatch } from './played.ts'
import { ownTeam, practiceRuns } from './practice.ts'
import { strengths } from './teams.ts'

/** Who sits in the stands, one to each place of a match. */
const scouts = ['Mara', 'Ole', 'Ines', 'Bo', 'Tove', 'Kim'] as const

/** Of an invented event, records are invented too; always the same. */
const seed = 771_204

/** A scout of this match wrote down one goal for the other. */
const swappedIn = 17
/** This one counted only, because a phone was flat and its sheet was keyed in. */
const countedIn = 11

const { auto, pause, teleop } = game.clock
const begins = auto + pause
const tenth = (seconds: number) => Math.round(seconds * 10) / 10

class Rows {
  readonly all: Row[] = []
  readonly #event: string
  readonly #sequences = new Map<string, number>()

  readonly #from: number

  /** @param from number of its first record’s id */
  constructor(event: string, from = 0) {
    this.#event = event
    this.#from = from
  }

  /** Of a scout, on the phone that is theirs all day. */
  add<Kind extends RecordKind>(
    kind: Kind,
    {
      scout,
      made,
      body,
      seat,
    }: { scout: string; made: string; seat?: Row['seat']; body: (of: Numbered) => RecordDocuments[Kind] },
  ): void {
    const device = `phone-${scout.toLowerCase()}`
    const sequence = (this.#sequences.get(device) ?? 0) + 1
    this.#sequences.set(device, sequence)
    const id = uuidOf(Date.parse(made), this.#from + this.all.length)
    const row = { id, kind, event: this.#event, device, sequence, scout, made, ...(seat && { seat }) }
    this.all.push({ ...row, body: body({ id, scout, device, sequence }) } as Row)
  }
}

interface Numbered {
  id: string
  scout: string
  device: string
  sequence: number
}

/** A UUID of version 7 (RFC 9562) whose random part is a number. */
function uuidOf(time: number, number: number): string {
  const hex = (value: number, digits: number) => value.toString(16).padStart(digits, '0')
  const moment = hex(time, 12)
  return `${moment.slice(0, 8)}-${moment.slice(8)}-7000-8000-${hex(number, 12)}`
}

type Goal = 'piers' | 'gantry' | 'lightship'

/** Pieces in the order in which they were tried: goals and misses mixed by lot. */
function tried({ teleop: hits, missed }: Performance, draw: Uniforms): { goal: Goal; hit: boolean }[] {
  const all = (['piers', 'gantry', 'lightship'] as const).flatMap((goal) => [
    ...Array.from({ length: hits[goal] }, () => ({ goal, hit: true })),
    ...Array.from({ length: missed[goal] }, () => ({ goal, hit: false })),
  ])
  return all
    .map((piece) => ({ piece, lot: draw.next() }))
    .sort((a, b) => a.lot - b.lot)
    .map(({ piece }) => piece)
}

/** Trips of one piece that fill teleop up to the departure, as unequal as they are. */
function inTeleop(of: Performance, { draw, until }: { draw: Uniforms; until: number }): Happening[] {
  const pieces = tried(of, draw)
  const lengths = pieces.map(() => Math.exp(0.5 * (draw.next() + draw.next() - 1)))
  const rest = 0.4 + 0.6 * draw.next()
  const scale = (until - begins) / (lengths.reduce((sum, each) => sum + each, 0) + rest)
  let elapsed = begins
  return pieces.flatMap(({ goal, hit }, index): Happening[] => {
    const from = elapsed
    const source = draw.next() < 0.85 ? 'outer' : 'channel'
    elapsed += lengths[index]! * scale
    const collected: Happening = {
      elapsed: tenth(from + 0.55 * (elapsed - from)),
      what: 'collected',
      source,
    }
    const placed: Happening = { elapsed: tenth(elapsed), what: hit ? 'scored' : 'missed', goal }
    // The first is held when teleop begins.
    return index === 0 ? [placed] : [collected, placed]
  })
}

function inAutonomous({ auto: pieces }: Performance): Happening[] {
  const goals = (['piers', 'gantry'] as const).flatMap((goal) => Array.from({ length: pieces[goal] }, () => goal))
  return goals.map((goal, index) => ({
    elapsed: tenth(3 + (index * (auto - 3.5)) / goals.length),
    what: 'scored' as const,
    goal,
  }))
}

const swapped = (happening: Happening): Happening => {
  const other = { piers: 'gantry', gantry: 'piers' }[happening.goal ?? '']
  return other === undefined ? happening : { ...happening, goal: other }
}

function seen(match: Match, of: Performance, numbered: Numbered): Observation {
  const { team } = of
  const about = { match: match.id, team, subject: 'robot' as const, origin: 'live' as const }
  const head = { format: 1 as const, ...numbered, ...about, game: 1, identifiedBy: 'number' as const }
  if (of.absent) return { ...head, absent: true, note: 'Nobody there' }
  const draw = new Uniforms(seed, [match.number, match.play, Number(team)])
  const departs = of.finish === null ? null : begins + teleop - (8 + 9 * draw.next())
  const timeline = [...inAutonomous(of), ...inTeleop(of, { draw, until: departs ?? begins + teleop - 0.2 })]
  if (departs !== null) timeline.push({ elapsed: tenth(departs), what: 'left' })
  const wrong = match.number === swappedIn && of.alliance === 'red' && of.index === 0
  const rest = {
    leftStart: of.left,
    finish: { attempted: of.finish, achieved: of.finish },
    fouls: { minor: of.minorFouls, major: 0 },
  }
  if (match.number === countedIn && of.alliance === 'red' && of.index === 2)
    return { ...head, ...rest, counts: counted(of) }
  return { ...head, ...rest, timeline: wrong ? timeline.map(swapped) : timeline }
}

function counted({ auto: early, teleop: late, missed }: Performance): NonNullable<Observation['counts']> {
  const goals = ['piers', 'gantry', 'lightship'] as const
  return [
    ...goals.map((goal) => ({
      goal,
      period: 'auto' as const,
      scored: goal === 'lightship' ? 0 : early[goal],
      missed: 0,
    })),
    ...goals.map((goal) => ({ goal, period: 'teleop' as const, scored: late[goal], missed: missed[goal] })),
  ].filter(({ scored, missed: wide }) => scored + wide > 0)
}

/** What teams said of themselves in the pits: most a little more than they do. */
function visits(rows: Rows, day: string): void {
  for (const [index, [team, { teleop: usual, davit }]] of [...strengths].entries()) {
    if (index % 2 === 1) continue
    const draw = new Uniforms(seed, [index])
    const made = `${day}T08:${String(10 + index).padStart(2, '0')}:00.000+01:00`
    const more = 1 + 0.9 * draw.next()
    const goals = Object.fromEntries(
      Object.entries(usual).flatMap(([goal, n]) => (n >= 0.5 ? [[goal, Math.max(1, Math.round(n * more))]] : [])),
    )
    rows.add('visit', {
      scout: scouts[index % scouts.length]!,
      made,
      body: () => ({
        team,
        at: made,
        claims: { goals, cycle: Math.round(90 / more) / 10 + 4, finish: davit > 0 ? 'davit' : 'dry-dock' },
        photos: [],
      }),
    })
  }
}

/** Practice of the demo's own robot on the evening before, timed by one who stands beside. */
function practice(event: string, day: string): Row[] {
  const rows = new Rows(event, 0x9000)
  const evening = Date.parse(`${day}T17:00:00.000+01:00`) - 24 * 3_600_000
  for (const { minutes, of } of practiceRuns())
    rows.add('observation', {
      scout: 'Alma',
      made: new Date(evening + minutes * 60_000).toISOString(),
      body: (numbered) => ({
        format: 1,
        ...numbered,
        match: null,
        team: ownTeam,
        subject: 'robot',
        origin: 'practice',
        game: 1,
        identifiedBy: 'number',
        ...of,
      }),
    })
  return rows.all
}

/**
 * What scouts recorded of the matches that are over: a record of nearly every robot that agrees with the officials, but for what goes wrong
 * at events. Two records are missing, one has two goals swapped, one was only counted, one robot was watched by two. Before them
 * stand ten runs of practice of the demo's own robot.
 */
export function records(event: string, played: readonly PlayedMatch[]): Row[] {
  const rows = new Rows(event)
  const day = played[0]!.match.time!.slice(0, 10)
  visits(rows, day)
  played.forEach(({ match, performances }, order) => {
    const end = Date.parse(match.time!) + 170_000
    performances.forEach((of, place) => {
      if ((order * 6 + place) % 71 === 40) return
      const scout = scouts[(place + order) % scouts.length]!
      const add = (who: string, after: number) =>
        rows.add('observation', {
          scout: who,
          made: new Date(end + after * 1000).toISOString(),
          seat: { alliance: of.alliance, position: (of.index + 1) as 1 | 2 | 3 },
          body: (numbered) => seen(match, of, numbered),
        })
      add(scout, 9 * place)
      if (order === 4 && place === 2) add(scouts[(place + order + 3) % scouts.length]!, 61)
    })
    if (order % 8 === 3) {
      const scout = scouts[order % scouts.length]!
      const made = new Date(end + 80_000).toISOString()
      const order3 = performances.slice(0, 3).map(({ team }) => team)
      rows.add('ranking', { scout, made, body: () => ({ match: match.id, scout, by: 'driving', order: order3 }) })
    }
  })
  return [...practice(event, day), ...rows.all]
}
