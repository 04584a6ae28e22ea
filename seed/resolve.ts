import type { OptionRecord } from '../src/model/documents/records.ts'
import type { Option } from '../src/model/documents/types.ts'
import { designs } from './designs.ts'
import { options } from './options.ts'

/** An option of the season with its robot put in, as the model wants it. Throws where the season has no such option. */
export function optionOf(id: string): Option {
  const record = options.find((candidate) => candidate.option.id === id)
  if (!record) throw new Error(`the season has no option '${id}'`)
  return withRobot(record)
}

export function withRobot(record: OptionRecord): Option {
  const design = designs.find((candidate) => candidate.robot.id === record.design)
  if (!design) throw new Error(`the season has no design '${record.design}'`)
  return { ...record.option, robot: design.robot }
}
