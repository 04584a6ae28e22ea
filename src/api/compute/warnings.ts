import type { Game, Option } from '../../model/documents/types.ts'
import { type Clash, clashesOf } from '../../model/match/clashes.ts'
import type { Warning } from '../contracts/compute/warning.ts'

/** Clashes of an alliance's partners in autonomous, with their names and a sentence each. */
export function warningsOf(game: Game, alliance: Warning['alliance'], options: readonly Option[]): Warning[] {
  return clashesOf(game, options).map((clash) => {
    const partners = clash.partners.map((i) => ({ position: i + 1, robot: options[i]!.robot.name }))
    const names = partners.map(({ position, robot }) => `${robot} (position ${position})`)
    const who = `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
    return { ...clash, alliance, partners, message: `${who} ${whatHappens(game, clash)}` }
  })
}

function whatHappens(game: Game, clash: Clash): string {
  if (clash.kind === 'pieces') {
    const { name } = game.sources.find(({ id }) => id === clash.source)!
    return `take ${clash.wanted} pieces from “${name}” in autonomous, where ${clash.stock} lie at the match’s start`
  }
  const near = `${clash.distance.toFixed(2)} m from centre to centre, and touch below ${clash.touching.toFixed(2)} m`
  if (clash.kind === 'start') return `begin in each other’s place: ${near}`
  if (clash.kind === 'end') return `end autonomous in each other’s place: ${near}`
  return `drive into each other ${clash.at.toFixed(1)} s after the start: their paths come within ${near}`
}
