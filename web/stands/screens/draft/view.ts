import { redWall } from '../../parts/choices.ts'
import type { About } from '../../record/draft.ts'
import type { View } from '../../record/ground.ts'

/** How the field is seen from here; outside of a match the robot's own wall is where red's would be. */
export function useView({ seat }: Pick<About, 'seat'>): View {
  return { alliance: seat?.alliance ?? 'red', redWall: redWall.use() }
}
