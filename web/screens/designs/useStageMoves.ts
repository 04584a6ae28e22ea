import type { Robot, Stage } from '../../../src/model/documents/types.ts'
import type { StripHandlers } from '../../charts/CycleStrip.tsx'
import type { StripBar } from '../../charts/stripLayout.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { words } from '../../words/catalogue.ts'
import { type ShownLeg, tripOf } from './cycle.ts'
import { exchanged, neighbour, withoutStage } from './network.ts'

/** Changing the order of a trip's stages and removing one, by the keys on its bar. What happened is said. */
export function useStageMoves(of: {
  robot: Robot
  legs: readonly ShownLeg[]
  onSaid(text: string): void
}): Pick<StripHandlers, 'onExchange' | 'onRemove'> {
  const edit = useEdit()
  const texts = words().designs.stage
  const found = (bar: StripBar): { leg: ShownLeg; stages: Stage[]; stage: Stage } | null => {
    const leg = of.legs.find(({ id }) => id === bar.leg)
    const trip = leg && tripOf(of.robot, leg)
    const stage = trip && 'stages' in trip ? trip.stages.find(({ id }) => id === bar.stage) : undefined
    return leg && trip && 'stages' in trip && stage ? { leg, stages: trip.stages, stage } : null
  }
  const keep = (leg: ShownLeg, stages: Stage[], text: string) => {
    edit.set(['robot', ...leg.trip, 'stages'], stages)
    of.onSaid(text)
  }
  return {
    onExchange: (bar, direction) => {
      const at = found(bar)
      if (!at) return
      const { leg, stages, stage } = at
      const other = neighbour(stages, stage.id, direction)
      if (other === null) return of.onSaid(direction < 0 ? texts.first : texts.last)
      const name = stages.find(({ id }) => id === other)!.name
      keep(leg, exchanged(stages, stage.id, other), texts.moved(stage.name, name))
    },
    onRemove: (bar) => {
      const at = found(bar)
      if (at) keep(at.leg, withoutStage(at.stages, at.stage.id), texts.removed(at.stage.name))
    },
  }
}
