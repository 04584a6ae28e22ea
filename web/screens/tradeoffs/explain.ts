import { chanceToReach, type PieceWorth, type Turn } from '../../../src/model/compare/index.ts'
import type { BeliefReport, Input } from '../../../src/model/compare/types.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import type { Distribution } from '../../charts/quantileDots.ts'
import { words } from '../../words/catalogue.ts'
import { type Explanation, robotInputs } from '../../words/explain.ts'
import { percent, plain, points, seconds, signedPoints } from '../../words/format.ts'
import { inputWords } from '../../words/inputs.ts'
import { optionName } from '../../words/verdict.ts'

interface Documents {
  game: Game
  options: Option[]
}

const ranges = (inputs: readonly Input[], documents: Documents): Explanation['inputs'] =>
  inputs.map((input) => {
    const { name, say } = inputWords(input, documents)
    return { label: name, value: `${say(input.low)} – ${say(input.likely)} – ${say(input.high)}` }
  })

/** Which unknowns do not change the answer alone, and how near each comes to it. */
export function explainIdle(
  known: readonly { turn: Turn; input: Input }[],
  documents: Documents,
  source: string,
): Explanation {
  const text = words().explainTradeoffs.idle
  const idle = known.filter(({ turn }) => turn.crossings.length === 0)
  return {
    title: text.title,
    result: text.result(idle.length, known.length),
    formula: text.formula,
    parts: known.map(({ turn, input }) => {
      const { name, say } = inputWords(input, documents)
      return {
        label: name,
        value: optionName(documents.options, turn.bestAtLow),
        note:
          turn.crossings.length === 0
            ? text.lead(points(turn.leastLead))
            : text.turns(turn.crossings.map(({ value }) => say(value)).join(', ')),
      }
    }),
    inputs: ranges(
      known.map(({ input }) => input),
      documents,
    ),
    source,
  }
}

/** The chance of at least so many points in a match. */
export function explainReach(
  option: Option,
  of: { distribution: Distribution; points: number; source: string },
): Explanation {
  const text = words().explainTradeoffs.reach
  const chance = (value: number) => percent(chanceToReach(of.distribution, value))
  const around = [of.points - 10, of.points - 5, of.points, of.points + 5, of.points + 10].filter((value) => value >= 0)
  return {
    title: text.title(option.name),
    result: text.result(plain(of.points), chance(of.points)),
    formula: text.formula,
    parts: around.map((value) => ({ label: text.part(plain(value)), value: chance(value) })),
    inputs: robotInputs(option),
    source: of.source,
  }
}

/** What choosing an option loses on average against knowing better, beside what the others lose. */
export function explainRegret(
  belief: BeliefReport,
  option: string,
  inputs: readonly Input[],
  of: { documents: Documents; source: string },
): Explanation {
  const text = words().explainTradeoffs.regret
  const { documents, source } = of
  return {
    title: text.title,
    result: text.result(optionName(documents.options, option), points(belief.regret[option] ?? 0)),
    formula: text.formula,
    parts: documents.options.map(({ id, name }) => ({
      label: name,
      value: points(belief.regret[id] ?? 0),
      note: text.best(percent(belief.best[id] ?? 0)),
    })),
    inputs: ranges(inputs, documents),
    source,
  }
}

/** A match of one option against a match of another. */
export function explainDifference(
  pair: readonly [Option, Option],
  of: { difference: Distribution; source: string },
): Explanation {
  const text = words().explainTradeoffs.difference
  const [own, other] = pair
  const share = (chosen: (value: number) => boolean) =>
    of.difference.reduce((sum, [value, chance]) => (chosen(value) ? sum + chance : sum), 0)
  const less = percent(share((value) => value < 0))
  const quantile = (wanted: number) => {
    let below = 0
    for (const [value, chance] of of.difference) {
      below += chance
      if (below >= wanted - 1e-9) return value
    }
    return of.difference.at(-1)?.[0] ?? 0
  }
  return {
    title: text.title,
    result: text.result(own.name, other.name, less),
    formula: text.formula,
    parts: [
      { label: text.less, value: less },
      { label: text.same, value: percent(share((value) => value === 0)) },
      { label: text.more, value: percent(share((value) => value > 0)) },
      {
        label: text.mean,
        value: signedPoints(of.difference.reduce((sum, [value, chance]) => sum + value * chance, 0)),
      },
      { label: text.low, value: signedPoints(quantile(0.1)) },
      { label: text.middle, value: signedPoints(quantile(0.5)) },
      { label: text.high, value: signedPoints(quantile(0.9)) },
    ],
    inputs: [],
    source: of.source,
  }
}

/** What one more piece is worth at some times of the match. */
export function explainPiece(option: Option, worth: PieceWorth, source: string): Explanation {
  const text = words().explainTradeoffs.piece
  const { at } = worth.loads[0]!
  const most = at.reduce((best, entry) => (entry[1] > best[1] ? entry : best))
  return {
    title: text.title(option.name),
    result: text.result(points(most[1]), seconds(most[0])),
    formula: text.formula,
    parts: at
      .filter(([left]) => left % 15 === 0)
      .map(([left, value]) => ({ label: text.at(seconds(left)), value: points(value) })),
    inputs: robotInputs(option),
    source,
  }
}

/** Points of every option at the most likely values of a map. */
export function explainMap(
  axes: readonly [Input, Input],
  of: { documents: Documents; likely: readonly number[] | null; source: string },
): Explanation {
  const text = words().explainTradeoffs.map
  const [x, y] = axes.map((input) => inputWords(input, of.documents).name) as [string, string]
  return {
    title: text.title(x, y),
    result: text.likely,
    formula: text.formula,
    parts: of.documents.options.map(({ name }, index) => ({
      label: name,
      value: of.likely ? points(of.likely[index]!) : '–',
    })),
    inputs: ranges(axes, of.documents),
    source: of.source,
  }
}
