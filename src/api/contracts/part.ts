import * as z from 'zod'
import type { PartRecord } from '../../model/documents/part.ts'
import { format } from './primitives.ts'
import { part } from './timings/index.ts'

export const partRecord = z
  .strictObject({ format, part })
  .meta({ id: 'PartRecord', description: 'A part of the parts shelf; its id and name are the document’s' })
partRecord satisfies z.ZodType<PartRecord>
