import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import { useLocation } from 'wouter'
import type { CompareReport, Input } from '../../../src/model/compare/types.ts'
import type {
  ComparisonRecord,
  DecisionRecord,
  KeptAir,
  KeptOverride,
  StatedField,
} from '../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { keptAir } from '../../../src/model/timing/air/keptAir.ts'
import { useChanges } from '../../data/documents.ts'
import { idFrom } from '../../data/identity.ts'
import { words } from '../../words/catalogue.ts'
import { points } from '../../words/format.ts'
import { inputWords } from '../../words/inputs.ts'
import { measureWords } from '../../words/measure.ts'
import { headline, isLevel, sureness, turning, verdict } from '../../words/verdict.ts'
import { askModel } from '../../worker/client.ts'
import { SaveHere } from '../documents/SaveHere.tsx'
import { againstPoints, headlineBy, standingBy } from './objective/standing.ts'

/** What stored air does to each option that has it: kept in the record, so that it is there when the page is printed. */
const airOf = ({ game, options }: { game: Game; options: Option[] }): Promise<KeptAir[]> =>
  Promise.all(
    options
      .filter(({ robot }) => robot.air)
      .map(async (option) => keptAir(option.id, await askModel('airPlan', { game, option }, { asked: true }))),
  )

/** Writes the answer down as a decision, with a snapshot of what it was computed from. */
export function MakeDecision(props: {
  record: ComparisonRecord
  base: number
  dirty: boolean
  documents: { game: Game; options: Option[] }
  report: CompareReport
  /** Whether the report is that of these documents: a record of another one could not be computed again. */
  state: 'fresh' | 'computing' | 'stored'
  /** The unknowns that are not overridden. */
  inputs: Input[]
  overrides: KeptOverride[]
  /** Who plays with and against the options, where that is judged by. */
  field: StatedField | null
}) {
  const { record, documents, report, field } = props
  const { options } = documents
  const measure = record.objective === 'points' ? undefined : record.objective
  const standing = measure && report.field ? standingBy(report.field, measure) : null
  const texts = words().decisions.make
  const found = verdict(report)
  const [, go] = useLocation()
  const { save } = useChanges()
  const [name, setName] = useState('')
  // Until somebody chooses, what is ahead by what counts: matches come after the points. Of level options none is.
  const [picked, setChosen] = useState<string | null>(null)
  const chosen = picked ?? standing?.best ?? (found && !isLevel(found) ? found.best : '')
  const [busy, setBusy] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const [unchosen, setUnchosen] = useState(false)
  if (!found) return null
  const write = async () => {
    if (name.trim() === '') return setTrouble(texts.nameNeeded)
    setTrouble(null)
    if (chosen === '') return setUnchosen(true)
    setBusy(true)
    try {
      const decision = decisionOf(props, { title: name.trim(), chosen, air: await airOf(documents) })
      const outcome = await save.mutateAsync({
        kind: 'decision',
        id: decision.id,
        name: decision.name,
        body: decision,
        base: null,
      })
      if ('saved' in outcome) go(`/decisions/${decision.id}`)
    } catch (error) {
      setTrouble((error as Error).message)
    } finally {
      setBusy(false)
    }
  }
  return (
    <section className="sheet stack no-print" aria-labelledby="decide-title">
      <h2 id="decide-title">{texts.title}</h2>
      <p>
        {texts.intro} {texts.nameHelp}
      </p>
      <div className="row" style={{ alignItems: 'end' }}>
        <TextInput
          label={texts.name}
          value={name}
          onChange={(event) => setName(event.currentTarget.value)}
          error={trouble}
          w={320}
          maw="100%"
        />
        <NativeSelect
          label={texts.chosen}
          value={chosen}
          data={[
            ...(chosen === '' ? [{ value: '', label: texts.choose }] : []),
            ...options.map((option) => ({ value: option.id, label: option.name })),
          ]}
          error={unchosen && chosen === '' ? texts.chooseFirst : null}
          onChange={(event) => setChosen(event.currentTarget.value)}
        />
        <Button onClick={() => void write()} loading={busy} disabled={props.dirty || props.state !== 'fresh'}>
          {texts.button}
        </Button>
      </div>
      {props.dirty ? (
        <SaveHere why={texts.saveFirst} />
      ) : (
        props.state !== 'fresh' && (
          <p className="soft small">{props.state === 'computing' ? texts.waiting : texts.notComputed}</p>
        )
      )}
    </section>
  )

  function decisionOf(
    of: typeof props,
    { title, chosen: option, air }: { title: string; chosen: string; air: KeptAir[] },
  ): DecisionRecord {
    const input = record.inputs.find(({ id }) => id === record.breakEven)
    return {
      format: 1,
      id: idFrom(title),
      name: title,
      question: record.question,
      decidedOn: new Date().toISOString().slice(0, 10),
      comparison: { id: record.id, revision: of.base },
      chosen: option,
      assumptions: [],
      result: [...byMatches(), `${headline(found!, options)}. ${sureness(found!, options)}`].join(' '),
      wouldChange: input && report.breakEven?.input === input.id ? turning(report, input, documents) : [],
      measureNext: report.belief ? [measureWords(report.belief, record.inputs, documents)] : [],
      objections: [],
      agreed: [],
      checkAtEvent: '',
      checks: checksOf(option),
      snapshot: {
        game: documents.game,
        options,
        inputs: props.inputs,
        result: report,
        ...(measure && field ? { objective: measure, field } : {}),
        tradeOff: record.name,
        ...(air.length > 0 ? { air } : {}),
        ...(props.overrides.length > 0 ? { overrides: props.overrides } : {}),
      },
    }
  }

  /** What whole matches say, first, where they are what counts; the sentence by points follows. */
  function byMatches(): string[] {
    if (!measure || !report.field) return []
    const against = againstPoints({ ...report, field: report.field }, measure, documents)
    return [`${headlineBy(report.field, measure, options)}.`, ...against.sentences, words().objective.byPoints]
  }

  /** What an event can show at once: the points that are expected, and the number that the answer hinges on. */
  function checksOf(option: string): NonNullable<DecisionRecord['checks']> {
    const summary = report.options.find(({ id }) => id === option)
    const input = record.inputs.find(({ id }) => id === report.breakEven?.input)
    const { name: unknown, say } = input ? inputWords(input, documents) : { name: '', say: String }
    const title = options.find(({ id }) => id === option)?.name ?? option
    return [
      ...(summary
        ? [
            {
              quantity: texts.ourPoints(title),
              expected: texts.expected(points(summary.mean), points(summary.p10), points(summary.p90)),
              when: texts.afterSix,
            },
          ]
        : []),
      ...(input ? [{ quantity: unknown, expected: say(input.likely), when: texts.atEvent }] : []),
    ]
  }
}
