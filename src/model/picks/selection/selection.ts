import { turnsOf } from './turns.ts'
import type {
  Refusal,
  RefusedStep,
  SelectionAlliance,
  SelectionRules,
  SelectionState,
  SelectionStep,
  Turn,
} from './types.ts'

/** What the steps are worked through with; each step makes a new one. */
interface Inner {
  partners: readonly (readonly string[])[]
  /** Of alliances that have had a turn; the others' follow from the seeds. */
  captains: readonly (string | null)[]
  settled: readonly boolean[]
  /** Place among all turns. */
  at: number
  declined: readonly string[]
  withdrawn: readonly string[]
  /** Those who declined and may not become captains for it. */
  barred: readonly string[]
}

/**
 * A selection as it runs: who is captain, whose turn it is, who may be invited. Everything follows from seeds, rules and
 * steps, so that undoing is leaving steps out.
 */
export class Selection {
  readonly state: SelectionState
  private readonly inner: Inner
  private readonly turns: readonly Turn[]

  private constructor(of: Course & { inner: Inner }) {
    const { rules, seeds, turns } = of
    this.turns = turns
    const found = settle(of.inner, { rules, seeds, turns })
    this.inner = found.inner
    this.state = stateOf(found, { rules, seeds, turns })
  }

  /** Before the first step. @param seeds all teams, best first, each once */
  static begin(rules: SelectionRules, seeds: readonly string[]): Selection {
    const each = <Of>(value: Of) => Array.from({ length: rules.alliances }, () => value)
    return new Selection({
      rules,
      seeds,
      turns: turnsOf(rules),
      inner: {
        partners: each([]),
        captains: each(null),
        settled: each(false),
        at: 0,
        declined: [],
        withdrawn: [],
        barred: [],
      },
    })
  }

  /** Why a step can not be taken now; null where it can. */
  refusal(step: SelectionStep): Refusal | null {
    const { seeds, turn, free, declined, withdrawn, alliances } = this.state
    const { team } = step
    if (!seeds.includes(team)) return 'unknown'
    if (withdrawn.includes(team)) return 'withdrawn'
    const own = alliances.find(({ captain, partners }) => captain === team || partners.includes(team))
    if (step.kind === 'withdraws') return own && (own.captain !== team || own.partners.length > 0) ? 'taken' : null
    if (step.kind === 'joins') {
      if (turn) return 'running'
      if (own) return 'taken'
      return alliances.some(({ number, captain }) => number === step.alliance && captain !== null) ? null : 'noAlliance'
    }
    if (!turn) return 'over'
    if (own?.partners.includes(team)) return 'taken'
    if (own?.number === turn.alliance) return 'own'
    if (declined.includes(team)) return 'declined'
    return free.includes(team) ? null : 'captain'
  }

  /** The selection after a step. @throws Error for one that is refused: ask first */
  take(step: SelectionStep): Selection {
    const why = this.refusal(step)
    if (why !== null) throw new Error(`${step.team} ${step.kind}: refused, ${why}`)
    const { rules, seeds } = this.state
    return new Selection({ rules, seeds, turns: this.turns, inner: this.after(step) })
  }

  private after(step: SelectionStep): Inner {
    const { inner } = this
    const { team } = step
    const added = (number: number) => inner.partners.map((own, index) => (index === number - 1 ? [...own, team] : own))
    switch (step.kind) {
      case 'declines': {
        const { rules, alliances } = this.state
        const bars = rules.afterDeclining === 'out' && !alliances.some(({ captain }) => captain === team)
        return {
          ...inner,
          declined: [...inner.declined, team],
          barred: bars ? [...inner.barred, team] : inner.barred,
        }
      }
      case 'withdraws':
        return {
          ...inner,
          withdrawn: [...inner.withdrawn, team],
          // A captain who is not there gives the place up, even when its turn has come.
          settled: inner.settled.map((own, k) => own && inner.captains[k] !== team),
          captains: inner.captains.map((captain) => (captain === team ? null : captain)),
        }
      case 'joins':
        return { ...inner, partners: added(step.alliance) }
      case 'accepts':
        return { ...inner, partners: added((this.state.turn as Turn).alliance), at: inner.at + 1 }
    }
  }
}

/** A selection after all steps; the first that is refused ends it, and is told. */
export function selectionAfter(
  rules: SelectionRules,
  seeds: readonly string[],
  steps: readonly SelectionStep[],
): { selection: Selection; refused: RefusedStep | null } {
  let selection = Selection.begin(rules, seeds)
  for (const [index, step] of steps.entries()) {
    const why = selection.refusal(step)
    if (why !== null) return { selection, refused: { index, step, why } }
    selection = selection.take(step)
  }
  return { selection, refused: null }
}

interface Course {
  rules: SelectionRules
  seeds: readonly string[]
  turns: readonly Turn[]
}

/** Where a selection stands after a step. */
interface Standing {
  inner: Inner
  captains: readonly (string | null)[]
  /** Whoever may be invited now, or after the selection may join. */
  free: string[]
}

/** Goes on to the next turn in which there is a captain to invite and somebody to be invited. From there on it stays captain. */
function settle(inner: Inner, course: Course): Standing {
  const captains = captainsOf(inner, course)
  for (let { at } = inner; ; at++) {
    const turn = course.turns[at]
    if (!turn) {
      const within = new Set([...captains, ...inner.partners.flat(), ...inner.withdrawn])
      return { inner: { ...inner, at }, captains, free: course.seeds.filter((team) => !within.has(team)) }
    }
    const own = turn.alliance - 1
    const free = captains[own] ? invitable(inner, { ...course, turn, captains }) : []
    if (free.length > 0) {
      const settled = inner.settled.with(own, true)
      const stay = captains.map((team, k) => (settled[k] ? (team as string) : null))
      return { inner: { ...inner, at, settled, captains: stay }, captains, free }
    }
  }
}

/** Captains of all alliances: those who have had a turn stay, the others are the best seeded teams that are left. */
function captainsOf(inner: Inner, { seeds }: Course): (string | null)[] {
  const gone = new Set([...inner.partners.flat(), ...inner.withdrawn, ...inner.barred, ...inner.captains])
  const left = seeds.filter((team) => !gone.has(team))
  let next = 0
  return inner.captains.map((team, k) => (inner.settled[k] ? team : (left[next++] ?? null)))
}

function invitable(
  { partners, declined, withdrawn, settled }: Inner,
  { rules, seeds, turn, captains }: Course & { turn: Turn; captains: readonly (string | null)[] },
): string[] {
  const taken = new Set([...partners.flat(), ...declined, ...withdrawn])
  const barred = captains.filter(
    (_, k) => settled[k] || k === turn.alliance - 1 || turn.round > 1 || !rules.captainsInvitable,
  )
  return seeds.filter((team) => !taken.has(team) && !barred.includes(team))
}

function stateOf({ inner, captains, free }: Standing, { rules, seeds, turns }: Course): SelectionState {
  const alliances = captains.map(
    (captain, k): SelectionAlliance => ({
      number: k + 1,
      captain,
      partners: inner.partners[k] as readonly string[],
      settled: inner.settled[k] as boolean,
    }),
  )
  return {
    ...{ rules, seeds, alliances, free },
    turn: turns[inner.at] ?? null,
    declined: inner.declined,
    withdrawn: inner.withdrawn,
  }
}
