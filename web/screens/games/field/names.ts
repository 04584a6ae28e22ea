import type { Point } from '../../../../src/model/documents/types.ts'
import type { System } from '../../../units/quantities.ts'
import { sayQuantity } from '../../../units/write.ts'
import { words } from '../../../words/catalogue.ts'
import type { Thing } from './things.ts'

/** What a thing on the field is called: 'Piers (G1), spot 2'. */
export function thingName(thing: Thing): string {
  const texts = words().field
  switch (thing.kind) {
    case 'start':
      return texts.start(thing.name)
    case 'spot':
      return texts.spot(thing.name, thing.letter, thing.spot + 1, thing.of)
    case 'obstacle':
      return texts.obstacle(thing.name)
    case 'corner':
      return texts.corner(thing.name, thing.corner + 1)
  }
}

/** Where it stands: '1.4 m along, 1.1 m across'. */
export const sayAt = ([x, y]: Point, system: System): string =>
  words().field.at(sayQuantity(x, 'length', system, 3), sayQuantity(y, 'length', system, 3))
