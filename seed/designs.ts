import type { DesignRecord } from '../src/model/documents/records.ts'
import { withAir } from './air.ts'
import { kittiwake } from './kittiwake.ts'
import { puffin } from './puffin.ts'
import { shearwater } from './shearwater.ts'

export const designs: DesignRecord[] = [shearwater, withAir(kittiwake), puffin].map((robot) => ({
  format: 1,
  game: 'breakwater',
  robot,
}))
