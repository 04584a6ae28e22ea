import { canonicalJson } from '../../scouting/canonical.ts'
import { matchKey } from '../order.ts'
import { seatKey } from '../seats.ts'
import type { BringReport, ContentDifference, ContentPart, EventContents, KeptApart } from './types.ts'

/** What is here, as far as a file concerns it. */
export interface Here {
  /** The event as it is here; null: there is none of its id. */
  contents: EventContents | null
  /** Whether it was removed here. */
  removed: boolean
  /** Revisions of the file's game here, and its newest one; null: there is no such game. */
  rules: EventContents['rules'] | null
  /** Hash by id of the records here whose ids stand in the file, of whichever event. */
  hashes: ReadonlyMap<string, string>
  /** `id hash` of rows kept apart here. */
  apart: ReadonlySet<string>
  /** Nicknames here by id. */
  people: ReadonlyMap<string, string>
}

/** What is to be written, and what is said of it. */
export interface BringPlan {
  take: EventContents
  report: BringReport
}

export const apartKey = ({ row, hash }: Pick<KeptApart, 'row' | 'hash'>): string => `${row.id} ${hash}`

/** aside: kept, but not in its own place. */
type Judgement = 'new' | 'same' | 'aside' | { differs: Omit<ContentDifference, 'part'> }

const same = (a: unknown, b: unknown): boolean => canonicalJson(a) === canonicalJson(b)

/**
 * What of a file is taken into what is here. A place that is empty takes what the file has for it; one that is taken stays, and
 * is told where the file says something else. Records follow their one rule: same id and content are there already, same id and
 * other content are kept apart. Taken twice, nothing is taken the second time.
 */
export function planBring(file: EventContents, here: Here): BringPlan {
  const there = here.contents
  const differs: ContentDifference[] = []
  const parts: BringReport['parts'] = []
  const named = namesOf(file)
  function judged<Item>(part: ContentPart, items: readonly Item[], judge: (item: Item) => Judgement): Item[] {
    const told = items.map((item) => [item, judge(item)] as const)
    for (const [, judgement] of told)
      if (typeof judgement === 'object') differs.push(named({ part, ...judgement.differs }))
    const fresh = told.filter(([, judgement]) => judgement === 'new').map(([item]) => item)
    const already = told.filter(([, judgement]) => judgement === 'same').length
    parts.push({ part, added: fresh.length, already })
    return fresh
  }
  const event = judged('event', there ? file.event.slice(-1) : file.event, ({ body }) => {
    if (!there) return 'new'
    return same(body, there.event.at(-1)!.body) ? 'same' : { differs: { id: body.id } }
  })
  const rules = takenRules(file, here, judged)
  const matches = judged('matches', file.matches, judgeMatch(there))
  const results = judged(
    'results',
    file.results,
    judgeResult(file, there, new Set(matches.map(({ match }) => match.id))),
  )
  const seats = new Map(there?.assignments.map((each) => [placeOf(each), each.person]))
  const going = new Set([...(there?.matches ?? []), ...matches].map(({ match }) => match.id))
  const assignments = judged('assignments', file.assignments, (each) => {
    const { match: id, seat } = each
    const before = seats.get(placeOf(each))
    if (before === undefined && going.has(id)) return 'new'
    return before === each.person ? 'same' : { differs: { id, detail: seatKey(seat) } }
  })
  const { records, apart, conflicts } = takenRecords(file, here, judged)
  const choices = judged('choices', file.choices, judgeChoice(file, there))
  const drills = judged('drills', file.drills, (drill) => {
    const before = there?.drills.find(({ id }) => id === drill.id)
    return !before ? 'new' : same(before, drill) ? 'same' : { differs: { id: drill.id } }
  })
  const known = new Set(there?.forecasts.map(({ id }) => id))
  // Their ids are those of their content, so that nothing can be another under the same id.
  const forecasts = judged('forecasts', file.forecasts, ({ id, match }) =>
    known.has(id) ? 'same' : going.has(match) ? 'new' : { differs: { id: match } },
  )
  const selection = judged('selection', file.selection, judgeLine(file, there))
  const people = judged('people', file.people, ({ id, nickname }) => {
    const before = here.people.get(id)
    return before === undefined ? 'new' : before === nickname ? 'same' : { differs: { id, detail: nickname } }
  })
  return {
    take: {
      ...{ event, rules, matches, results, assignments, records, apart },
      ...{ choices, drills, forecasts, selection, people },
    },
    report: { fresh: there === null, back: here.removed, parts, conflicts, differs },
  }
}

/** A difference with what people call its match by. */
function namesOf({ matches }: EventContents) {
  const names = new Map(matches.map(({ match: { id, phase, number, play } }) => [id, { phase, number, play }]))
  const ofMatches: readonly ContentPart[] = ['matches', 'results', 'assignments', 'choices', 'forecasts']
  return (difference: ContentDifference): ContentDifference => {
    const match = ofMatches.includes(difference.part) ? names.get(difference.id) : undefined
    return match ? { ...difference, match } : difference
  }
}

type Judged = <Item>(part: ContentPart, items: readonly Item[], judge: (item: Item) => Judgement) => Item[]

const placeOf = ({ match, seat }: EventContents['assignments'][number]): string => `${match} ${seatKey(seat)}`

/** One revision that is another here makes them other rules: none of the file is then mixed into them. */
function takenRules({ rules }: EventContents, { rules: there }: Here, judged: Judged): EventContents['rules'] {
  const before = new Map(there?.map(({ revision, body }) => [revision, body]))
  const isOther = ({ revision, body }: EventContents['rules'][number]) =>
    before.has(revision) && !same(before.get(revision), body)
  const mixed = rules.some(isOther)
  return judged('rules', rules, (each) => {
    if (before.has(each.revision) && !isOther(each)) return 'same'
    return mixed ? { differs: { id: each.body.id, detail: String(each.revision) } } : 'new'
  })
}

/** A match's place is its id, and in a schedule its phase, number and play. */
function judgeMatch(there: EventContents | null) {
  const byId = new Map(there?.matches.map((each) => [each.match.id, each]))
  const keys = new Set(there?.matches.filter(({ removed }) => !removed).map(({ match }) => matchKey(match)))
  return ({ match, removed }: EventContents['matches'][number]): Judgement => {
    const before = byId.get(match.id)
    if (before) return same([before.match, before.removed], [match, removed]) ? 'same' : { differs: { id: match.id } }
    return !removed && keys.has(matchKey(match)) ? { differs: { id: match.id } } : 'new'
  }
}

/** A result is taken for a match that has none here, and that is here as the file has it. */
function judgeResult(file: EventContents, there: EventContents | null, fresh: ReadonlySet<string>) {
  const before = new Map(there?.results.map(({ match, result }) => [match, result]))
  const newest = new Map(file.results.map(({ match, result }) => [match, result]))
  const matches = new Map(there?.matches.map(({ match }) => [match.id, match]))
  const theirs = new Map(file.matches.map(({ match }) => [match.id, match]))
  return ({ match: id }: EventContents['results'][number]): Judgement => {
    if (before.has(id)) return same(before.get(id), newest.get(id)) ? 'same' : { differs: { id } }
    const isSame = fresh.has(id) || (matches.has(id) && same(teamsOf(matches.get(id)!), teamsOf(theirs.get(id)!)))
    return isSame ? 'new' : { differs: { id } }
  }
}

const teamsOf = ({ red, blue }: EventContents['matches'][number]['match']) =>
  [red, blue].map((side) => side.map(({ team }) => team))

function takenRecords(file: EventContents, here: Here, judged: Judged) {
  const conflicts: EventContents['records'] = []
  const records = judged('records', file.records, (record) => {
    const before = here.hashes.get(record.row.id)
    if (before === undefined) return 'new'
    if (before === record.hash || here.apart.has(apartKey(record))) return 'same'
    conflicts.push(record)
    return 'aside'
  })
  const known = new Set(here.contents?.apart.map((each) => `${apartKey(each)} ${each.resolution}`))
  const apart = judged('apart', file.apart, (each) => {
    if (here.hashes.get(each.row.id) === each.hash) return 'same'
    if (!here.apart.has(apartKey(each))) return 'new'
    const isSame = each.resolution === null || known.has(`${apartKey(each)} ${each.resolution}`)
    return isSame ? 'same' : { differs: { id: each.row.id } }
  })
  return {
    records,
    apart: [
      ...apart,
      ...conflicts.map(({ row, hash, receivedAt, person }) => ({
        ...{ row, hash, receivedAt, person },
        reason: 'otherContent' as const,
        resolution: null,
        resolvedAt: null,
        resolvedBy: null,
      })),
    ],
    conflicts: conflicts.map(({ row }) => row.id),
  }
}

/** All choices over a robot in a match, or none. */
function judgeChoice(file: EventContents, there: EventContents | null) {
  const group = (choices: EventContents['choices'] = []) => {
    const groups = new Map<string, EventContents['choices']>()
    for (const each of choices) groups.set(robotOf(each), [...(groups.get(robotOf(each)) ?? []), each])
    return groups
  }
  const [theirs, ours] = [group(file.choices), group(there?.choices)]
  return (choice: EventContents['choices'][number]): Judgement => {
    const [now, before] = [theirs.get(robotOf(choice))!, ours.get(robotOf(choice))]
    if (!before) return 'new'
    return same(now.at(-1)!.record, before.at(-1)!.record)
      ? 'same'
      : { differs: { id: choice.match, detail: choice.team } }
  }
}

const robotOf = ({ match, team }: EventContents['choices'][number]): string => `${match} ${team}`

/** Lines follow each other: those of a file are taken where all that is here are its first ones, or nothing is. */
function judgeLine({ selection }: EventContents, there: EventContents | null) {
  const before = there?.selection ?? []
  const known = new Map(before.map((each) => [each.id, each]))
  const goesOn = before.every(({ id }, index) => selection[index]?.id === id)
  return (line: EventContents['selection'][number]): Judgement => {
    const own = known.get(line.id)
    if (own) return same(own.line, line.line) ? 'same' : { differs: { id: line.id } }
    return goesOn ? 'new' : { differs: { id: line.id } }
  }
}
