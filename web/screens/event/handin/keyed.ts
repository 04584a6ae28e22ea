import type { Game } from '../../../../src/model/documents/types.ts'
import type { Match, Observation, Phase, Row, Seat } from '../../../../src/model/scouting/types.ts'
import type { SheetField } from '../sheets/fields.ts'

/** What is wrong with what was keyed, by the field's key; each has a sentence in the catalogue. */
export type KeyedProblem =
  | 'needed'
  | 'notWhole'
  | 'tooMany'
  | 'yesOrNo'
  | 'noSuchFinish'
  | 'noMatch'
  | 'noTeam'
  | 'tooLong'

export interface KeyedHead {
  phase: Phase
  match: string
  robot: string
}

export type Typed = { [key: string]: string }

export interface Keyed {
  match: Match
  team: string
  seat: Seat
  identifiedBy: Observation['identifiedBy']
  body: Pick<Observation, 'absent' | 'leftStart' | 'counts' | 'finish' | 'fouls' | 'lostSeconds' | 'note'>
}

const seats: readonly Seat[] = (['red', 'blue'] as const).flatMap((alliance) =>
  ([1, 2, 3] as const).map((position) => ({ alliance, position })),
)

/** The play that counts: the last one of the number. */
function matchOf(matches: readonly Match[], { phase, match }: KeyedHead): Match | undefined {
  const plays = matches.filter((each) => each.phase === phase && String(each.number) === match.trim())
  return plays.toSorted((a, b) => b.play - a.play)[0]
}

const slotAt = (match: Match, { alliance, position }: Seat) =>
  match[alliance].find((slot) => slot.position === position) ?? match[alliance][position - 1]!

/** The robot by its place (1 to 3 red, 4 to 6 blue, as the sheet numbers them) or by its team's number. */
export function robotOf(match: Match, typed: string): Pick<Keyed, 'team' | 'seat' | 'identifiedBy'> | null {
  const named = typed.trim().toUpperCase()
  const byNumber = seats.find((seat) => slotAt(match, seat).team.toUpperCase() === named)
  if (byNumber) return { team: slotAt(match, byNumber).team, seat: byNumber, identifiedBy: 'number' }
  const seat = /^[1-6]$/.test(named) ? seats[Number(named) - 1]! : null
  return seat && { team: slotAt(match, seat).team, seat, identifiedBy: 'position' }
}

const most = { count: 1000, lost: 1200, foul: 100 } as const

function readWhole(text: string, limit: number): number | KeyedProblem {
  if (text.trim() === '') return 0
  if (!/^\d{1,5}$/.test(text.trim())) return 'notWhole'
  return Number(text) > limit ? 'tooMany' : Number(text)
}

/** What a sheet says, or what is wrong with which of its fields. Empty boxes are zeros, as on paper. */
export function readKeyed(
  sheet: { fields: readonly SheetField[]; game: Pick<Game, 'finishes'>; matches: readonly Match[] },
  head: KeyedHead,
  typed: Typed,
): { keyed: Keyed } | { problems: { [key: string]: KeyedProblem } } {
  const problems: { [key: string]: KeyedProblem } = {}
  const match = matchOf(sheet.matches, head)
  const robot = match ? robotOf(match, head.robot) : null
  if (!match) problems['match'] = head.match.trim() === '' ? 'needed' : 'noMatch'
  else if (!robot) problems['robot'] = head.robot.trim() === '' ? 'needed' : 'noTeam'

  const whole = (key: string, limit: number): number => {
    const read = readWhole(typed[key] ?? '', limit)
    if (typeof read === 'number') return read
    problems[key] = read
    return 0
  }
  const truth = (key: string): boolean => {
    const text = (typed[key] ?? '').trim()
    if (text !== '' && text !== '0' && text !== '1') problems[key] = 'yesOrNo'
    return text === '1'
  }
  const finish = (key: string): string | null => {
    const number = whole(key, most.count)
    if (number > sheet.game.finishes.length) problems[key] = 'noSuchFinish'
    return sheet.game.finishes[number - 1]?.id ?? null
  }

  const body: Keyed['body'] = {}
  const counts = new Map<string, NonNullable<Observation['counts']>[number]>()
  for (const field of sheet.fields) {
    const { key } = field
    if (field.kind === 'absent') body.absent = truth(key)
    else if (field.kind === 'left') body.leftStart = truth(key)
    else if (field.kind === 'lost') body.lostSeconds = whole(key, most.lost)
    else if (field.kind === 'foul')
      body.fouls = { minor: 0, major: 0, ...body.fouls, [field.what]: whole(key, most.foul) }
    else if (field.kind === 'finish')
      body.finish = { attempted: null, achieved: null, ...body.finish, [field.what]: finish(key) }
    else if (field.kind === 'count') {
      const { goal, period, what } = field
      const name = `${goal} ${period}`
      const before = counts.get(name) ?? { goal, period, scored: 0, missed: 0 }
      counts.set(name, { ...before, [what]: whole(key, most.count) })
    } else {
      const note = (typed[key] ?? '').trim()
      if (note.length > 2000) problems[key] = 'tooLong'
      if (note !== '') body.note = note
    }
  }
  if (!match || !robot || Object.keys(problems).length > 0) return { problems }
  // Of a robot that did not play nothing else was seen.
  if (body.absent) return { keyed: { match, ...robot, body: { absent: true, ...(body.note && { note: body.note }) } } }
  const { absent: _, ...seen } = body
  return { keyed: { match, ...robot, body: { ...seen, counts: [...counts.values()] } } }
}

/** The record of a keyed sheet: what a scout saw live, only counted. */
export function keyedRow(
  { match, team, seat, identifiedBy, body }: Keyed,
  way: { id: string; event: string; device: string; sequence: number; scout: string; made: string; game: number },
): Row {
  const { event, made, game, ...own } = way
  return {
    ...own,
    kind: 'observation',
    event,
    made,
    seat,
    body: { ...own, format: 1, match: match.id, team, subject: 'robot', origin: 'live', game, identifiedBy, ...body },
  }
}
