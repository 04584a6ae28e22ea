import { Button } from '@mantine/core'
import { useMemo, useRef, useState } from 'react'
import type { BeliefReport, CompareReport, Input } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import { assembleComparison, assembleOption } from '../../data/assemble.ts'
import type { Stored } from '../../data/documents.ts'
import { useDebounced } from '../../data/useDebounced.ts'
import { EditProvider } from '../../shell/fields/EditContext.tsx'
import { OwnText } from '../../shell/fields/OwnText.tsx'
import { PartList } from '../../shell/parts/PartList.tsx'
import { Trouble } from '../../shell/states.tsx'
import { Terms } from '../../shell/Terms.tsx'
import { words } from '../../words/catalogue.ts'
import { useModel } from '../../worker/useModel.ts'
import { SaveBar } from '../documents/SaveBar.tsx'
import { useEditing } from '../documents/useEditing.ts'
import { OverrideNote } from '../overrides/OverrideNote.tsx'
import { OwnNumbersProvider } from '../overrides/OwnNumbersContext.tsx'
import { OwnNumbersPanel } from '../overrides/OwnNumbersPanel.tsx'
import { useOwnNumbers } from '../overrides/useOwnNumbers.ts'
import { overridesSource } from '../overrides/words.ts'
import { AirNotes } from './AirNotes.tsx'
import { Belief } from './Belief.tsx'
import { BreakEven } from './BreakEven.tsx'
import { Calls } from './Calls.tsx'
import { Headline } from './Headline.tsx'
import { KeepResult } from './KeepResult.tsx'
import { MakeDecision } from './MakeDecision.tsx'
import { Matches } from './Matches.tsx'
import { FieldAnswer } from './objective/FieldAnswer.tsx'
import { ObjectiveForm } from './objective/ObjectiveForm.tsx'
import { useFieldParts } from './objective/useFieldParts.ts'
import { useFieldPlayed } from './objective/useFieldPlayed.ts'
import { PieceWorths } from './PieceWorths.tsx'
import { matching, newer, withNewest } from './revisions.ts'
import { Stagger } from './Stagger.tsx'
import { Swings } from './Swings.tsx'
import { TwoUnknowns } from './TwoUnknowns.tsx'
import { Unknowns } from './Unknowns.tsx'
import { beliefUnder, nameless } from './unknownNames.ts'
import type { Parts } from './useParts.ts'
import './tradeoffs.css'

export function TradeOff(props: {
  stored: Stored<'comparison'>
  made: Parts
  newest: Parts | null
  /** An older revision: computed from what it names, and only looked at. */
  old: boolean
}) {
  const { stored, old } = props
  const editing = useEditing({ kind: 'comparison', stored, old })
  const { draft } = editing
  const [beliefAnew, setBeliefAnew] = useState<{ of: string; inputs: Input[]; report: BeliefReport } | null>(null)
  const record = draft.value
  const parts = matching(record, props.made) ? props.made : (props.newest ?? props.made)
  const base = useMemo(
    () =>
      assembleComparison(
        record,
        parts.game.body,
        parts.options.map(({ option, design }) => ({ option: option.body, design: design.body })),
      ),
    [record, parts],
  )
  const asKept = useMemo(
    () => ({
      game: parts.game.body,
      options: parts.options.map(({ option, design }) => assembleOption(option.body, design.body.robot)),
    }),
    [parts],
  )
  const own = useOwnNumbers(
    base,
    asKept.options.map(({ robot }) => robot),
    record.overrides,
  )
  // Two strings, so that an edit of the question's wording computes nothing.
  const key = JSON.stringify(own.request)
  const settledKey = useDebounced(key, 500)
  const request = useMemo(() => JSON.parse(settledKey) as typeof base, [settledKey])
  const computed = useModel(
    'compare',
    useMemo(() => ({ request }), [request]),
  )

  // Belief takes its seconds and does not hang on what its unknowns are called.
  const believed = JSON.stringify({ ...own.request, inputs: nameless(own.request.inputs ?? none) })
  const saying = (of: ComparisonRecord) => JSON.stringify([nameless(of.inputs), of.overrides])
  const savedBelief = saying(stored.body) === saying(record) ? stored.body.result?.belief : undefined
  const anew = beliefAnew?.of === believed ? beliefAnew : null
  const now = (anew ? own.request.inputs : record.inputs) ?? none
  // The same object while it stays the same, so that progress of another answer draws its pictures no further time.
  const belief = useMemo(
    () =>
      anew
        ? beliefUnder(anew.report, anew.inputs, now)
        : savedBelief && beliefUnder(savedBelief, stored.body.inputs, now),
    [anew, savedBelief, stored.body.inputs, now],
  )
  const known = computed.data && !computed.isPlaceholderData ? computed.data : (record.result ?? computed.data)
  const { objective = 'points' } = record
  const field = useFieldParts(objective === 'points' ? undefined : record.field, record.overrides)
  const played = useFieldPlayed(request, own.pending ? null : field.stated, record.seed)
  const stated =
    objective === 'points' ? undefined : ((played.fresh ? played.answer?.report : undefined) ?? record.result?.field)
  const report: CompareReport | null = known ? { ...known, belief, field: stated } : null
  const fresh = !own.pending && Boolean(computed.data) && !computed.isPlaceholderData && settledKey === key
  const state = computed.error ? 'stored' : fresh ? 'fresh' : 'computing'
  // What is written down or kept has its matches, all of them or as many as there were when somebody stopped.
  const complete =
    fresh && (objective === 'points' || (played.fresh && (played.state === 'done' || played.state === 'stopped')))
  const outdated = props.newest && newer(record, props.newest, field.newer)

  const documents = useMemo(() => ({ game: request.game, options: request.options }), [request])
  // What is computed with: the unknowns as they were half a second ago, so that typing computes nothing. What is about an
  // overridden time is no unknown meanwhile.
  const inputs = request.inputs ?? none
  const settled = useMemo(
    () => ({ ...record, inputs, breakEven: request.breakEven ?? null }),
    [record, inputs, request.breakEven],
  )
  const text = words().tradeoffs
  const screen = useRef<HTMLDivElement>(null)
  const source = text.source({
    name: record.name,
    revision: draft.base,
    dirty: draft.dirty,
    options: parts.options.map(({ option, design }) =>
      text.sourceOption(option.name, option.revision, design.name, design.revision),
    ),
    game: parts.game.name,
    gameRevision: parts.game.revision,
  })

  return (
    <EditProvider value={editing.fields([])}>
      <OwnNumbersProvider value={overridesSource(own.kept, asKept)}>
        <div className="stack wide" ref={screen}>
          <div className="row spread">
            <div>
              <p className="label">{text.label(parts.game.name)}</p>
              <h1>
                <OwnText text={record.question} />
              </h1>
            </div>
            <SaveBar of={editing} href="/trade-offs" />
          </div>
          <Terms
            of={['option', 'expectedPoints', 'belief', 'breakEven', 'swing', 'regret', 'worthOfInformation', 'leaveBy']}
          />
          <PartList label={text.parts.label} names={partNames()} of={screen} />
          {outdated && !old && (
            <div className="row">
              <p>{outdated}</p>
              <Button variant="default" onClick={() => draft.replace(withNewest(record, props.newest!, field.newest))}>
                {text.takeNewest}
              </Button>
            </div>
          )}
          <OverrideNote kept={own.kept} documents={asKept} />
          {computed.error && <Trouble title={text.notComputed} error={computed.error} />}
          <Stagger>
            {objective !== 'points' && (
              <FieldAnswer
                report={report}
                measure={objective}
                documents={documents}
                field={field.stated}
                error={field.error}
                played={played}
                source={source}
              />
            )}
            {report && (
              <Headline
                second={objective !== 'points'}
                report={report}
                record={record}
                documents={documents}
                source={source}
                state={state}
                kept={own.kept}
                progress={computed.progress}
                notes={<AirNotes game={request.game} options={request.options} ready={fresh} />}
              />
            )}
            {report && complete && !old && (
              <KeepResult record={record} report={report} onKeep={(result) => draft.set(['result'], result)} />
            )}
            <ObjectiveForm
              record={record}
              game={request.game}
              onChange={(next) => draft.replace({ ...record, ...next })}
            />
            <Matches game={request.game} options={request.options} source={source} />
            {report && <Swings report={report} record={settled} documents={documents} source={source} ready={fresh} />}
            {report && (
              <BreakEven
                report={report}
                record={settled}
                documents={documents}
                source={source}
                onKeep={(id) => draft.set(['breakEven'], id)}
              />
            )}
            {inputs.length > 0 && (
              <TwoUnknowns documents={documents} inputs={inputs} first={sidesOf(report, record)} source={source} />
            )}
            {inputs.length > 0 && (
              <Belief
                request={{ ...own.request, belief: { seed: record.seed } }}
                belief={belief ?? null}
                record={record}
                documents={documents}
                source={source}
                onComputed={(report) =>
                  setBeliefAnew({ of: believed, inputs: [...(own.request.inputs ?? none)], report })
                }
              />
            )}
            <Calls game={request.game} options={request.options} source={source} />
            <PieceWorths game={request.game} options={request.options} source={source} ready={fresh} />
            <Unknowns record={record} documents={asKept} />
            <OwnNumbersPanel record={record} own={own} documents={asKept} />
            {report && !old && (
              <MakeDecision
                record={record}
                base={draft.base}
                dirty={draft.dirty}
                documents={documents}
                report={report}
                state={state === 'fresh' && !complete ? 'computing' : state}
                inputs={[...inputs]}
                overrides={own.kept}
                field={field.stated}
              />
            )}
          </Stagger>
        </div>
      </OwnNumbersProvider>
    </EditProvider>
  )
}

const none: never[] = []

/** The screen's parts by the id of their heading. */
const partNames = () => {
  const { label: _, ...names } = words().tradeoffs.parts
  return Object.entries(names).map(([part, name]) => ({ id: `${part}-title`, name }))
}

/** What a map has on its sides at first: the unknown that the answer names, then those that move the lead most. */
function sidesOf(report: CompareReport | null, { breakEven }: ComparisonRecord): string[] {
  return [...(breakEven === null ? [] : [breakEven]), ...(report?.swing ?? []).map(({ input }) => input)]
}
