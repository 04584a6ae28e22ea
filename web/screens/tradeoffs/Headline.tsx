import type { ReactNode } from 'react'
import type { CompareReport, OptionSummary } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord, KeptOverride } from '../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { percentCell, pointsCell } from '../../charts/cells.ts'
import { seriesLetter } from '../../charts/DotPlot.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { placeName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import { explainChance, explainLead } from '../../words/explain.ts'
import { explainAhead, explainOption } from '../../words/explainAnswer.ts'
import { explainSpread } from '../../words/explainSpread.ts'
import { listed, percent, points, signedPoints } from '../../words/format.ts'
import { isLevel, optionName, type Verdict, verdict } from '../../words/verdict.ts'
import { Struck } from '../overrides/OwnMark.tsx'
import { SideBySide } from './SideBySide.tsx'

interface Answer {
  report: CompareReport
  record: ComparisonRecord
  documents: { game: Game; options: Option[] }
  source: string
  /** Numbers that somebody set, with what had been computed in their place. */
  kept: readonly KeptOverride[]
}

/** The answer, how sure it is, and the options side by side. */
export function Headline(
  props: Answer & {
    state: 'fresh' | 'computing' | 'stored'
    progress: { done: number; total: number } | null
    /** What the numbers do not contain. */
    notes?: ReactNode
    /** Another objective is what is judged by: the points stand behind it. */
    second?: boolean
  },
) {
  const { report, record, documents, source, state, progress } = props
  const { options } = documents
  const text = words().tradeoffs.answer
  const found = verdict(report)
  if (!found) return null
  const share = progress && percent(progress.done / progress.total)
  return (
    <section id="answer-title" className="sheet stack" aria-label={text.region}>
      <p className={props.second ? undefined : 'answer'}>
        {props.second && `${words().objective.byPoints} `}
        {isLevel(found)
          ? words().verdict.level(optionName(options, found.best), optionName(options, found.second ?? ''))
          : optionName(options, found.best)}
        {found.second && (
          <>
            :{' '}
            <CameAbout explain={() => explainLead(report, options, found, source)}>
              <span className="numeral">{signedPoints(found.lead)}</span>
            </CameAbout>{' '}
            {isLevel(found) ? text.apart : text.perMatch}
          </>
        )}
      </p>
      {found.chance !== null && (
        <p>
          {text.chanceBefore}{' '}
          <CameAbout explain={() => explainChance(report, record.inputs, documents, source)}>
            {percent(found.chance)}
          </CameAbout>{' '}
          {text.chanceAfter}
        </p>
      )}
      <Options {...props} found={found} />
      <Finishing game={documents.game} options={options} />
      {props.notes}
      <p className="soft small" role="status">
        {state === 'fresh' ? text.fresh : state === 'stored' ? text.stored : text.computing(share)}
      </p>
      {documents.game.finishes.length > 0 && (
        <p className="soft small">
          {text.skip} {skipHere(report, options)}
        </p>
      )}
    </section>
  )
}

function Options(props: Answer & { found: Verdict }) {
  const { report, documents, source, found } = props
  const { options } = documents
  const text = words().tradeoffs.answer
  const belief = report.belief
  const spread = (summary: OptionSummary) =>
    explainSpread(options.find(({ id }) => id === summary.id)!, summary, source)
  return (
    <SideBySide
      caption={text.table}
      first={text.option}
      columns={[text.points, text.eight, text.spread, text.ahead, ...(belief ? [text.belief] : [])]}
      rows={report.options.map((option, index) => {
        const other = option.id === found.best ? found.second : found.best
        return {
          id: option.id,
          name: `${seriesLetter(index)} ${optionName(options, option.id)}`,
          cells: [
            pointsCell(
              option.mean,
              <>
                <Struck kept={inThere(props.kept, option)} option={option.id} />
                <CameAbout explain={() => explainOption(option, options, source)}>{points(option.mean)}</CameAbout>
              </>,
            ),
            <CameAbout key="range" explain={() => spread(option)}>
              {text.range(points(option.p10), points(option.p90))}
            </CameAbout>,
            pointsCell(option.sd, <CameAbout explain={() => spread(option)}>{points(option.sd)}</CameAbout>),
            other
              ? percentCell(
                  report.beats[option.id]?.[other] ?? 0,
                  <CameAbout explain={() => explainAhead(report, [option.id, other], options, source)}>
                    {percent(report.beats[option.id]?.[other] ?? 0)}
                  </CameAbout>,
                )
              : '–',
            ...(belief
              ? [
                  percentCell(
                    belief.best[option.id] ?? 0,
                    <CameAbout explain={() => explainChance(report, props.record.inputs, documents, source)}>
                      {percent(belief.best[option.id] ?? 0)}
                    </CameAbout>,
                  ),
                ]
              : []),
          ],
        }
      })}
    />
  )
}

/** The overrides that an option's shown points have in them already: until they are computed with, the mark would be a lie. */
const inThere = (kept: readonly KeptOverride[], { id, mean }: OptionSummary): KeptOverride[] =>
  kept.filter((one) => one.kind !== 'points' || one.option !== id || Math.abs(one.points - mean) < 0.05)

/** Where each option may finish, when they differ in it: names alone do not say which robot has the hook. */
function Finishing({ game, options }: { game: Game; options: readonly Option[] }) {
  const text = words().tradeoffs.answer
  const places = options.map(({ finish, role }) => (finish.mode === 'skip' ? [] : role.finishes))
  if (game.finishes.length === 0 || new Set(places.map(String)).size < 2) return null
  return (
    <p className="soft small">
      {options
        .map(({ name }, index) =>
          text.finishes(
            `${seriesLetter(index)} ${name}`,
            places[index]!.length === 0 ? null : listed(places[index]!.map((id) => placeName(game, id))),
          ),
        )
        .join(' ')}
    </p>
  )
}

/** The same robot played both ways, where the comparison has it: the sentence with its two numbers. */
function skipHere(report: CompareReport, options: readonly Option[]): string | null {
  const mean = (option: Option) => points(report.options.find(({ id }) => id === option.id)?.mean ?? 0)
  for (const best of options) {
    if (best.finish.mode !== 'best') continue
    const skip = options.find((option) => option.finish.mode === 'skip' && alike(option, best))
    if (skip) return words().tradeoffs.answer.skipHere(best.name, mean(best), skip.name, mean(skip))
  }
  return null
}

/** Two options that differ in name and finish alone. */
const alike = (a: Option, b: Option): boolean => essence(a) === essence(b)

const essence = ({ id: _, name: __, finish: ___, ...rest }: Option): string => JSON.stringify(rest)
