import { Uniforms } from '../../src/model/random/index.ts'

/** The invented teams of the invented event. */
const names = [
  'Barnacle Works',
  'Tidal Gears',
  'Windlass',
  'Salt and Solder',
  'Capstan Club',
  'Lee Shore',
  'Fathom Five',
  'Bowline',
  'Sextant',
  'Driftwood',
  'Halyard',
  'Spring Tide',
  'Cuttlefish',
  'Pilot Boat',
  'Sandbar',
  'Fog Signal',
  'Keelson',
  'Marlinspike',
  'Undertow',
  'Oilskins',
  'Ferry Lane',
  'Net Loft',
  'Weather Eye',
  'Long Reach',
  'Shingle Bank',
]

export const teams = names.map((name, index) => ({ team: String(90001 + index), name }))

/** How a team’s robot plays, on average over matches. */
export interface Strength {
  /** Pieces in autonomous and in teleop, by goal. */
  auto: { piers: number; gantry: number }
  teleop: { piers: number; gantry: number; lightship: number }
  /** Share of pieces that miss. */
  misses: number
  /** Chances to end at the davit, and at the dry dock. */
  davit: number
  dock: number
  leaves: number
  /** Minor fouls in a match. */
  fouls: number
}

const seed = 31_401

/** Strong and weak robots, specialists of high and of low, a few for the lightship: all drawn, always the same. */
export const strengths: ReadonlyMap<string, Strength> = new Map(
  teams.map(({ team }, index) => {
    const draw = new Uniforms(seed, [index])
    const skill = 0.45 + 1.1 * draw.next()
    const high = draw.next()
    const lightship = draw.next() < 0.3 ? 2.5 * draw.next() : 0.3 * draw.next()
    const davit = draw.next() < 0.55 ? 0.35 + 0.55 * draw.next() : 0
    return [
      team,
      {
        auto: { piers: skill * (1 - high) * 1.6, gantry: skill * high * 1.2 },
        teleop: { piers: skill * (1 - high) * 9 + 0.5, gantry: skill * high * 5, lightship: skill * lightship },
        misses: 0.06 + 0.2 * draw.next(),
        davit,
        dock: 0.75 * (1 - davit),
        leaves: 0.7 + 0.3 * draw.next(),
        fouls: 0.15 + 0.6 * draw.next() ** 2,
      },
    ]
  }),
)
