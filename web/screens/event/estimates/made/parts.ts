import type { Game } from '../../../../../src/model/documents/types.ts'
import type { MadeMatch, MadeOfTeam } from '../../../../../src/model/scouting/estimates/made.ts'
import type { TeamEstimate } from '../../../../../src/model/scouting/estimates/types.ts'
import { words } from '../../../../words/catalogue.ts'
import { percent, plain, points } from '../../../../words/format.ts'
import { madeIn, type Quantity, quantityName } from './quantity.ts'

/** A number that another is put together from; `opens`: it is one that opens itself. */
export interface MadePart {
  label: string
  note: string
  value: string
  opens?: Quantity
}

const worthIn = (game: Game, goal: string, period: 'auto' | 'teleop'): number => {
  const award = game.goals.find(({ id }) => id === goal)?.award
  return award?.kind === 'each' ? award[period] : 0
}

const paying = (game: Game, period: 'auto' | 'teleop') => game.goals.filter(({ id }) => worthIn(game, id, period) !== 0)

/** What a sum or a product is put together from; empty for what is a mean. */
export function partsOf(game: Game, of: TeamEstimate, what: Quantity): MadePart[] {
  const texts = words().made
  const named = (opens: Quantity, rest: Pick<MadePart, 'note' | 'value'>): MadePart => {
    return { label: quantityName(game, opens), opens, ...rest }
  }
  switch (what.kind) {
    case 'points':
      return paying(game, 'teleop').map(({ id }) => {
        const [count, award] = [of.goals[id]!.placed.mean, worthIn(game, id, 'teleop')]
        return named(
          { kind: 'placed', of: id },
          { note: texts.each(points(count), plain(award)), value: points(count * award) },
        )
      })
    case 'autonomousPoints': {
      const leave = game.leave?.points ?? 0
      const leaving = {
        note: texts.times(percent(of.leaves.mean), plain(leave)),
        value: points(of.leaves.mean * leave),
      }
      return [
        ...paying(game, 'auto').map(({ id }) => {
          const [count, award] = [of.autonomous[id]!.mean, worthIn(game, id, 'auto')]
          const note = texts.each(points(count), plain(award))
          return named({ kind: 'autonomous', of: id }, { note, value: points(count * award) })
        }),
        ...(leave === 0 ? [] : [named({ kind: 'leaves' }, leaving)]),
      ]
    }
    case 'finishPoints':
      return game.finishes.map(({ id, points: award }) => {
        const chance = of.finish[id]!.mean
        const note = texts.times(percent(chance), plain(award))
        return named({ kind: 'finish', of: id }, { note, value: points(chance * award) })
      })
    case 'placed': {
      const { attempts, success } = of.goals[what.of]!
      const goal = game.goals.find(({ id }) => id === what.of)?.name ?? what.of
      const share = of.attempts.mean > 0 ? attempts.mean / of.attempts.mean : 0
      return [
        named({ kind: 'attempts' }, { note: '', value: points(of.attempts.mean) }),
        { label: texts.shareOf(goal), note: '', value: percent(share) },
        named({ kind: 'success', of: what.of }, { note: '', value: percent(success.mean) }),
      ]
    }
    default:
      return []
  }
}

/** Own matches with what each says of the number, also of one that is put together from others. */
export function matchesOf(game: Game, made: MadeOfTeam, what: Quantity): MadeMatch[] {
  switch (what.kind) {
    case 'placed':
      return made.goals[what.of]?.placed ?? []
    case 'points':
      return summed(
        paying(game, 'teleop').map(({ id }) => ({ of: made.goals[id]!.placed, worth: worthIn(game, id, 'teleop') })),
      )
    case 'finishPoints':
      return summed(game.finishes.map(({ id, points: worth }) => ({ of: made.finish[id]!.matches, worth })))
    case 'autonomousPoints':
      return summed([
        ...paying(game, 'auto').map(({ id }) => ({
          of: made.goals[id]!.autonomous.matches,
          worth: worthIn(game, id, 'auto'),
        })),
        { of: made.leaves.matches, worth: game.leave?.points ?? 0 },
      ])
    default:
      return madeIn(made, what)?.matches ?? []
  }
}

/** Each match once, its values times what they are worth. */
function summed(all: readonly { of: readonly MadeMatch[]; worth: number }[]): MadeMatch[] {
  const matches = new Map<string, MadeMatch>()
  for (const { of, worth } of all)
    for (const each of of) {
      const before = matches.get(each.match)
      matches.set(each.match, { ...each, value: (before?.value ?? 0) + worth * each.value })
    }
  return [...matches.values()]
}
