import type { Option } from '../../model/documents/index.ts'
import type { Path } from '../../model/errors.ts'
import { ApiError } from '../errors.ts'

const byHabit =
  'An observed robot plays by its habit and weighs nothing, so that there is no plan of it: let it play with /api/compute/match'

/** A plan of an observed robot would be another robot's. @throws ApiError 'notOffered' for a robot with a habit */
export function refuseHabit({ robot }: Option, path: Path): void {
  if (robot.habit) throw new ApiError({ code: 'notOffered', message: byHabit, path: [...path, 'robot', 'habit'] })
}
