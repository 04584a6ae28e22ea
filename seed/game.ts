import type { Game } from '../src/model/documents/types.ts'
import { field, finishes, sources, starts } from './field.ts'

/** The invented season Breakwater: buoys from slipways to piers, gantry and lightship, then the dry dock or the davit. */
export const game: Game = {
  format: 1,
  id: 'breakwater',
  name: 'Breakwater',
  pieces: [{ id: 'buoy', name: 'Buoy' }],
  clock: { auto: 15, pause: 2, teleop: 135, endgame: 30 },
  field,
  starts,
  sources,
  goals: [
    {
      id: 'piers',
      name: 'Piers',
      accepts: ['buoy'],
      spots: [
        { id: 'piers.south', at: [1.4, 1.1] },
        { id: 'piers.north', at: [1.4, 7.1] },
      ],
      slots: 2,
      capacity: null,
      award: { kind: 'each', auto: 4, teleop: 3 },
    },
    {
      id: 'gantry',
      name: 'Gantry',
      accepts: ['buoy'],
      spots: [
        { id: 'gantry.foot', at: [3.95, 4.1] },
        { id: 'gantry.mark', at: [5.4, 4.4] },
      ],
      slots: 2,
      capacity: 12,
      award: { kind: 'each', auto: 8, teleop: 6 },
    },
    {
      id: 'lightship',
      name: 'Lightship',
      accepts: ['buoy'],
      spots: [{ id: 'lightship.side', at: [7.6, 7.3] }],
      slots: 1,
      capacity: null,
      award: { kind: 'hold', autoPerSecond: 1, teleopPerSecond: 1 },
    },
  ],
  finishes,
  leave: { points: 3 },
  sets: [{ id: 'string', name: 'String of moorings', needs: { piers: 3, gantry: 3 }, points: 4 }],
  bonuses: [
    {
      id: 'moored',
      name: 'Harbour moored',
      rankingPoints: 1,
      points: 0,
      metric: { kind: 'pieces', goals: ['piers', 'gantry'] },
      atLeast: { local: 18, final: 24 },
      scope: 'own',
    },
    {
      id: 'lit',
      name: 'Light kept',
      rankingPoints: 1,
      points: 0,
      metric: { kind: 'heldSeconds', goal: 'lightship' },
      atLeast: 60,
      scope: 'own',
    },
    {
      id: 'berthed',
      name: 'All berthed',
      rankingPoints: 1,
      points: 0,
      metric: { kind: 'finishPoints' },
      atLeast: 22,
      scope: 'own',
    },
  ],
  // biome-ignore lint/suspicious/noThenProperty: the model's own name for the order of tie-breakers
  ranking: { win: 3, tie: 1, loss: 0, per: 'match', then: ['score', 'finishPoints', 'autoPoints'] },
  fouls: { minor: 3, major: 8 },
  limits: { mass: 56, cost: 4200 },
}
