import { type FlowPath, laminar } from './flow.ts'

/** A chamber's pressure while its piston stands. */
interface Resting {
  /** At 0 s (Pa). */
  from: number
  /** Pressure at the other end of its flow path (Pa), towards which it goes. */
  towards: number
  /** Share of a second in which a choked flow at the chamber's own pressure would fill or empty it once: 1/s. */
  pace: number
  path: Pick<FlowPath, 'criticalRatio'>
}

/** A stretch of one law of flow, up to `until` (s since the piston stands). */
interface Stretch {
  until: number
  pressureAt(time: number): number
}

/**
 * How the pressure of a chamber of constant volume goes over time, isothermal, by ISO 6358 flow with its last hundredth straight
 * (`flowBetween`): choked, along the ellipse, and straight, each solved in closed form.
 *
 * With r = p/p₁ a chamber that is filled follows r' = k·√(1 − ((r − b)/(1 − b))²), a sine. With w = p/p₂ one that is emptied
 * follows w' = −k/(1 − b)·√((1 − 2b)·w² + 2b·w − 1), of which w'' is straight in w: a hyperbolic cosine, or a cosine for b
 * above ½. Both follow from the flow of ISO 6358-1:2013 (`freeFlow`); tests hold them against the integrator.
 */
export function pressureAtRest(resting: Resting): (time: number) => number {
  const stretches = resting.from <= resting.towards ? filling(resting) : emptying(resting)
  return (time) => stretches.find(({ until }) => time < until)!.pressureAt(time)
}

/** Where the ellipse ends, and its height there. */
function edgeOf(criticalRatio: number) {
  const edge = Math.max(laminar, criticalRatio)
  return { edge, height: Math.sqrt(1 - ((edge - criticalRatio) / (1 - criticalRatio)) ** 2) }
}

function filling({ from, towards, pace, path: { criticalRatio } }: Resting): Stretch[] {
  const { edge, height } = edgeOf(criticalRatio)
  const width = 1 - criticalRatio
  const stretches: Stretch[] = []
  let [ratio, time] = [from / towards, 0]
  if (ratio < criticalRatio) {
    const start = ratio
    stretches.push({
      until: (criticalRatio - start) / pace,
      pressureAt: (at) => towards * (start + pace * at),
    })
    ;[ratio, time] = [criticalRatio, stretches.at(-1)!.until]
  }
  if (ratio < edge) {
    const [begin, start] = [time, Math.asin((ratio - criticalRatio) / width)]
    stretches.push({
      until: begin + ((Math.asin((edge - criticalRatio) / width) - start) * width) / pace,
      pressureAt: (at) => towards * (criticalRatio + width * Math.sin(start + (pace * (at - begin)) / width)),
    })
    ;[ratio, time] = [edge, stretches.at(-1)!.until]
  }
  stretches.push(straight({ towards, apart: (ratio - 1) * towards, begin: time, pace: (pace * height) / (1 - edge) }))
  return stretches
}

function emptying({ from, towards, pace, path: { criticalRatio } }: Resting): Stretch[] {
  const { edge, height } = edgeOf(criticalRatio)
  const width = 1 - criticalRatio
  const stretches: Stretch[] = []
  let [times, time] = [from / towards, 0]
  if (times * criticalRatio > 1) {
    stretches.push({
      until: Math.log(times * criticalRatio) / pace,
      pressureAt: (at) => from * Math.exp(-pace * at),
    })
    ;[times, time] = [1 / criticalRatio, stretches.at(-1)!.until]
  }
  if (times * edge > 1) {
    const { placeOf, timesAt } = ellipse(criticalRatio)
    const [begin, start] = [time, placeOf(times)]
    stretches.push({
      until: begin + ((start - placeOf(1 / edge)) * 2 * width) / pace,
      pressureAt: (at) => towards * timesAt(start - (pace * (at - begin)) / (2 * width)),
    })
    ;[times, time] = [1 / edge, stretches.at(-1)!.until]
  }
  stretches.push(straight({ towards, apart: (times - 1) * towards, begin: time, pace: (pace * height) / (1 - edge) }))
  return stretches
}

/** The last hundredth: what is left falls by the same share in the same time. */
function straight({ towards, apart, begin, pace }: { towards: number; apart: number; begin: number; pace: number }) {
  return {
    until: Number.POSITIVE_INFINITY,
    pressureAt: (at: number) => towards + apart * Math.exp(-pace * (at - begin)),
  }
}

/** With w = 1 + 2(1 − b)·s² and s = sinh(√c·x)/√c, c = 1 − 2b (a sine where c < 0), x goes evenly in time. */
function ellipse(criticalRatio: number) {
  const c = 1 - 2 * criticalRatio
  const root = Math.sqrt(Math.abs(c))
  const twice = 2 * (1 - criticalRatio)
  const forth = c > 0 ? Math.sinh : Math.sin
  const back = c > 0 ? Math.asinh : Math.asin
  // At c = 0 both are the place itself.
  const even = root < 1e-8
  return {
    placeOf: (times: number) => {
      const s = Math.sqrt((times - 1) / twice)
      return even ? s : back(root * s) / root
    },
    timesAt: (place: number) => {
      const s = even ? place : forth(root * place) / root
      return 1 + twice * s * s
    },
  }
}
