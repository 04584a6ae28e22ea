import { Button } from '@mantine/core'
import { useMemo, useState } from 'react'
import type { CompareReport } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import { assembleComparison, assembleOption } from '../../data/assemble.ts'
import type { Stored } from '../../data/documents.ts'
import { useDebounced } from '../../data/useDebounced.ts'
import { EditProvider } from '../../shell/fields/EditContext.tsx'
import { Trouble } from '../../shell/states.tsx'
import { useModel } from '../../worker/useModel.ts'
import { SaveBar } from '../documents/SaveBar.tsx'
import { useEditing } from '../documents/useEditing.ts'
import { OverrideNote } from '../overrides/OverrideNote.tsx'
import { OwnNumbersProvider } from '../overrides/OwnNumbersContext.tsx'
import { OwnNumbersPanel } from '../overrides/OwnNumbersPanel.tsx'
import { useOwnNumbers } from '../overrides/useOwnNumbers.ts'
import { overridesSource } from '../overrides/words.ts'
import { Belief } from './Belief.tsx'
import { BreakEven } from './BreakEven.tsx'
import { Calls } from './Calls.tsx'
import { Headline } from './Headline.tsx'
import { MakeDecision } from './MakeDecision.tsx'
import { Matches } from './Matches.tsx'
import { Swings } from './Swings.tsx'
import { Unknowns } from './Unknowns.tsx'
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
  const [beliefAnew, setBeliefAnew] = useState<{ of: string; report: NonNullable<CompareReport['belief']> } | null>(
    null,
  )
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
  const asKept = {
    game: parts.game.body,
    options: parts.options.map(({ option, design }) => assembleOption(option.body, design.body.robot)),
  }
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

  const savedBelief =
    JSON.stringify([stored.body.inputs, stored.body.overrides]) === JSON.stringify([record.inputs, record.overrides])
      ? stored.body.result?.belief
      : undefined
  const belief = beliefAnew?.of === key ? beliefAnew.report : savedBelief
  const known = computed.data && !computed.isPlaceholderData ? computed.data : (record.result ?? computed.data)
  const report: CompareReport | null = known ? { ...known, belief } : null
  const fresh = !own.pending && Boolean(computed.data) && !computed.isPlaceholderData && settledKey === key
  const outdated = props.newest && newer(record, props.newest)

  // What is about an overridden time is no unknown meanwhile.
  const inputs = request.inputs ?? []
  const asked = { ...record, inputs, breakEven: request.breakEven ?? null }
  const documents = useMemo(() => ({ game: request.game, options: request.options }), [request])
  const source = `Comparison ‘${record.name}’, revision ${draft.base}${draft.dirty ? ' with unsaved edits' : ''}: ${parts.options
    .map(
      ({ option, design }) =>
        `${option.name} (revision ${option.revision}) of ${design.name} (revision ${design.revision})`,
    )
    .join('; ')}; ${parts.game.name} (revision ${parts.game.revision}).`

  return (
    <EditProvider value={editing.fields([])}>
      <OwnNumbersProvider value={overridesSource(own.kept, asKept)}>
        <div className="stack wide">
          <div className="row spread">
            <div>
              <p className="label">Trade-off · {parts.game.name}</p>
              <h1>{record.question}</h1>
            </div>
            <SaveBar of={editing} href="/trade-offs" />
          </div>
          {outdated && !old && (
            <div className="row">
              <p>{outdated}</p>
              <Button variant="default" onClick={() => draft.replace(withNewest(record, props.newest!))}>
                Compute with the newest
              </Button>
            </div>
          )}
          <OverrideNote kept={own.kept} documents={asKept} />
          {computed.error && <Trouble title="This can not be computed" error={computed.error} />}
          {report && (
            <Headline
              report={report}
              record={record}
              documents={documents}
              source={source}
              state={computed.error ? 'stored' : fresh ? 'fresh' : 'computing'}
              progress={computed.progress}
            />
          )}
          {report && fresh && !old && (
            <KeepResult record={record} report={report} onKeep={(result) => draft.set(['result'], result)} />
          )}
          <Matches game={request.game} options={request.options} source={source} />
          {report && asked.breakEven && (
            <BreakEven
              report={report}
              record={asked}
              documents={documents}
              source={source}
              onInput={(id) => draft.set(['breakEven'], id)}
            />
          )}
          {report?.swing && <Swings report={report} record={asked} documents={documents} source={source} />}
          {inputs.length > 0 && (
            <Belief
              request={{ ...own.request, belief: { seed: record.seed } }}
              belief={belief ?? null}
              record={record}
              documents={documents}
              source={source}
              onComputed={(found) => setBeliefAnew({ of: key, report: found })}
            />
          )}
          <Calls game={request.game} options={request.options} source={source} />
          <Unknowns record={record} documents={asKept} />
          <OwnNumbersPanel record={record} own={own} documents={asKept} />
          {report && !old && (
            <MakeDecision
              record={record}
              base={draft.base}
              dirty={draft.dirty}
              documents={documents}
              report={report}
              inputs={inputs}
              overrides={own.kept}
            />
          )}
        </div>
      </OwnNumbersProvider>
    </EditProvider>
  )
}

const matching = (record: ComparisonRecord, parts: Parts): boolean =>
  record.game.id === parts.game.id &&
  record.game.revision === parts.game.revision &&
  record.options.length === parts.options.length &&
  record.options.every(
    ({ option, design }, index) =>
      option.id === parts.options[index]!.option.id &&
      option.revision === parts.options[index]!.option.revision &&
      design.revision === parts.options[index]!.design.revision,
  )

/** Which documents have a newer revision than the comparison names, in words; null where none has. */
function newer(record: ComparisonRecord, newest: Parts): string | null {
  const names = [
    ...(newest.game.revision > record.game.revision ? [newest.game.name] : []),
    ...newest.options.flatMap(({ option, design }, index) => {
      const named = record.options[index]
      if (!named) return []
      return [
        ...(option.revision > named.option.revision ? [option.name] : []),
        ...(design.revision > named.design.revision ? [design.name] : []),
      ]
    }),
  ]
  return names.length > 0
    ? `Newer revisions exist than this was computed from: ${[...new Set(names)].join(', ')}.`
    : null
}

const withNewest = (record: ComparisonRecord, newest: Parts): ComparisonRecord => ({
  ...record,
  game: { id: newest.game.id, revision: newest.game.revision },
  options: newest.options.map(({ option, design }) => ({
    option: { id: option.id, revision: option.revision },
    design: { id: design.id, revision: design.revision },
  })),
})

/** Keeps what was computed with the comparison, where it is not what is stored. */
function KeepResult(props: { record: ComparisonRecord; report: CompareReport; onKeep(report: CompareReport): void }) {
  const stored = props.record.result
  const same =
    stored !== null &&
    props.report.options.every(
      (option, index) => Math.abs(option.mean - (stored.options[index]?.mean ?? Number.NaN)) < 0.005,
    ) &&
    JSON.stringify(stored.belief ?? null) === JSON.stringify(props.report.belief ?? null)
  if (same) return null
  return (
    <div className="row">
      <Button variant="default" onClick={() => props.onKeep(props.report)}>
        Keep this result in the comparison
      </Button>
      <span className="soft small">What is stored was computed otherwise. Then save.</span>
    </div>
  )
}
