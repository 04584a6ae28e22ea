import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import { inputFaults, type MechanismAnswer, type Sensitivity } from '../../../src/model/timing/index.ts'
import { secondsCell } from '../../charts/cells.ts'
import { DataTable } from '../../charts/Figure.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import { numbersOf } from '../parts/numbers.ts'
import { explainQuantity } from './explainTiming.ts'
import { hundredths } from './hundredths.ts'
import { kindOf, numbersIn } from './inputs.ts'
import { fieldWords } from './MechanismForm.tsx'
import { fourDigits } from './problems.ts'
import { quantityWords } from './quantities.ts'
import { remarkWords } from './remarks.ts'

interface Of {
  mechanism: Mechanism
  answer: MechanismAnswer
}

/** The time in one line, or why there is none: what stands beside the drawing. */
export function TimeLine({ mechanism, answer }: Of) {
  const texts = words().timings.panel
  if (answer.possible) {
    return (
      <p className="timing-seconds" role="status">
        {texts.seconds(hundredths(answer.seconds))}
      </p>
    )
  }
  return (
    <p className="loss" role="status">
      {texts.cannot} {whyNot(mechanism, answer)}
    </p>
  )
}

/** Why a mechanism gives no time, in the reader's words. */
export function whyNot(mechanism: Mechanism, answer: MechanismAnswer & { possible: false }): string {
  const texts = words().timings.panel
  if ('why' in answer) return remarkWords(answer.why)
  return inputFaults(mechanism.input).length > 0 ? texts.contradict : texts.refused
}

/** How the time varies, and what is not known of it. */
export function SpreadLines({ answer }: Pick<Of, 'answer'>) {
  const texts = words().timings.panel
  if (!answer.possible) return null
  const { spread, belief } = answer
  return (
    <>
      <p>
        {spread
          ? texts.varies({ mean: hundredths(spread.mean), low: hundredths(spread.p10), high: hundredths(spread.p90) })
          : texts.fixed}
      </p>
      {belief && (
        <p>
          {texts.believed({
            low: hundredths(belief.low),
            likely: hundredths(belief.likely),
            high: hundredths(belief.high),
          })}
        </p>
      )}
    </>
  )
}

/** What to look out for. */
export function Warnings({ answer }: Pick<Of, 'answer'>) {
  if (!('warnings' in answer) || answer.warnings.length === 0) return null
  return (
    <section>
      <h5>{words().timings.panel.warnings}</h5>
      <ul className="timing-note">
        {answer.warnings.map((warning) => (
          <li key={warning.code}>{remarkWords(warning)}</li>
        ))}
      </ul>
    </section>
  )
}

/** What an engineer checks: as far as it can be told where the mechanism can not do it. */
export function Quantities({ mechanism, answer, source }: Of & { source: string }) {
  const texts = words().timings
  if (!('quantities' in answer)) return null
  const rows = quantityWords(mechanism.calculator, answer.quantities)
  if (rows.length === 0) return null
  const fitted =
    mechanism.calculator === 'drive' && answer.possible && 'trapezoid' in answer.quantities
      ? answer.quantities.trapezoid
      : null
  return (
    <section>
      <h5>{texts.panel.check}</h5>
      <dl className="timing-quantities">
        {rows.map(({ key, what, much }) => (
          <div key={key}>
            <dt>{what}</dt>
            <dd className="numeral">
              <CameAbout explain={() => explainQuantity(mechanism, answer, { key, what, much, source })}>
                {much}
              </CameAbout>
            </dd>
          </div>
        ))}
      </dl>
      {fitted && <p>{texts.section.misfit(hundredths(fitted.rms), hundredths(fitted.worst))}</p>}
    </section>
  )
}

/** Smaller effects of a hundredth more than this (s) are nobody's concern. */
const noticed = 0.0005
const mostShown = 10

/** What a little more of each number does to the time. */
export function Sensitivities({ mechanism, answer }: Of) {
  const texts = words().timings.panel
  if (!answer.possible) return null
  const shown = answer.sensitivity
    .filter(({ secondsPerPercent, swing }) => Math.abs(secondsPerPercent) >= noticed || swing)
    .slice(0, mostShown)
  if (shown.length === 0) return null
  const rows = shown.map((each) => [
    ...labelled(mechanism, each),
    secondsCell(each.secondsPerPercent, signed(each.secondsPerPercent)),
    each.swing
      ? texts.swing(
          ...(each.swing.map((end) => (end === null ? texts.impossible : hundredths(end))) as [string, string]),
        )
      : '–',
  ])
  return (
    <section>
      <h5>{texts.little}</h5>
      <p className="soft small">{texts.littleHelp}</p>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.little}>
        <DataTable caption={texts.little} table={{ head: texts.littleHead, rows }} />
      </div>
    </section>
  )
}

const signed = (seconds: number): string => `${seconds > 0 ? '+' : ''}${plain(seconds, 4)}\u00a0s`

/** A sensitivity's number as the form names and writes it; those of a part by the part and its own label. */
function labelled(mechanism: Mechanism, { input, value }: Sensitivity): [string, string] {
  const number = numbersIn(kindOf(mechanism)).find(({ key }) => key === input)
  if (number) return [fieldWords(mechanism.calculator, input).label, fourDigits(value, number)]
  const [part, key] = input.split('.') as [string, string]
  const { kind } = (mechanism.input as unknown as { [part: string]: { kind: keyof typeof numbersOf } })[part]!
  const own = numbersOf[kind].find((each) => each.key === key)!
  const { labels } = words().parts
  const label = `${fieldWords(mechanism.calculator, part).label}: ${labels[key as keyof typeof labels]}`
  const { optional: _, column: __, ...limits } = own
  return [label, fourDigits(value, { min: 0, ...limits })]
}
