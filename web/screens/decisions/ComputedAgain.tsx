import { useQueries } from '@tanstack/react-query'
import { useMemo } from 'react'
import type { CompareReport } from '../../../src/model/compare/types.ts'
import { withoutOverridden } from '../../../src/model/documents/overrides.ts'
import type { DecisionRecord, Override } from '../../../src/model/documents/records.ts'
import { differences } from '../../data/difference.ts'
import { words } from '../../words/catalogue.ts'
import { points } from '../../words/format.ts'
import { isLevel, isNothing, optionName } from '../../words/verdict.ts'
import { askModel } from '../../worker/client.ts'
import { DifferenceTable } from '../documents/DifferenceTable.tsx'
import { standing } from '../rulesChange/flips.ts'
import {
  type Change,
  changesOf,
  type Means,
  type Newest,
  overridden,
  split,
  variantsOf,
  withOwnPoints,
} from './changes.ts'
import { MovedTable } from './MovedTable.tsx'
import { movedWords } from './movedWords.ts'

const meansOf = ({ options }: Pick<CompareReport, 'options'>, overrides?: readonly Override[]): Means =>
  withOwnPoints(Object.fromEntries(options.map(({ id, mean }) => [id, mean])), overrides)

/** What moved since the record was written, which documents did it and by how much, and whether the decision flips. */
export function ComputedAgain(props: { decision: DecisionRecord; newest: Newest; revision: number }) {
  const { decision, newest } = props
  const { snapshot } = decision
  const texts = words().decisions.again
  const changes = useMemo(() => changesOf(snapshot, overridden(newest, snapshot)), [snapshot, newest])
  const variants = useMemo(() => variantsOf(snapshot, changes), [snapshot, changes])
  const asked = [variants.kept, variants.now, ...variants.alone]
  const answers = useQueries({
    queries: asked.map((request) => ({
      queryKey: ['model', 'compare', { request }],
      queryFn: ({ signal }: { signal: AbortSignal }) => askModel('compare', { request }, { signal }),
      staleTime: Number.POSITIVE_INFINITY,
      retry: false,
      networkMode: 'always' as const,
    })),
  })
  const done = answers.filter(({ isPending }) => !isPending).length
  const [kept, now, ...alone] = answers
  const failed = kept?.error ?? now?.error
  const gone = goneWords(decision, newest)
  return (
    <>
      {gone && <p>{texts.gone(gone)}</p>}
      {failed ? (
        <p role="alert">{texts.notNow(failed.message)}</p>
      ) : done < answers.length || !kept?.data || !now?.data ? (
        <p role="status">{texts.computing(done, answers.length)}</p>
      ) : (
        <Found
          decision={decision}
          revision={props.revision}
          changes={changes}
          moved={split({
            written: meansOf(snapshot.result),
            kept: meansOf(kept.data, snapshot.overrides),
            alone: alone.map(({ data }) => (data ? meansOf(data, snapshot.overrides) : null)),
            now: meansOf(now.data, snapshot.overrides),
          })}
        />
      )}
      <Beliefs decision={decision} newest={newest} />
    </>
  )
}

function Found(props: {
  decision: DecisionRecord
  revision: number
  changes: Change[]
  moved: ReturnType<typeof split>
}) {
  const { decision, changes, moved } = props
  const texts = words().decisions.again
  const { options, result, overrides = [] } = decision.snapshot
  const after = standing(Object.entries(moved.now).map(([id, mean]) => ({ id, mean })))
  const before = standing(result.options)
  const name = (id: string) => optionName(options, id)
  const behind = moved.now[after.best]! - moved.now[decision.chosen]!
  return (
    <>
      <p role="status">
        <strong className={before.best === after.best || isLevel(after) ? undefined : 'loss'}>
          {after.lead === null || after.second === null
            ? texts.staysAlone(name(after.best))
            : isLevel(after)
              ? `${words().verdict.level(name(after.best), name(after.second))}.`
              : before.best === after.best
                ? texts.stays(name(after.best), points(after.lead))
                : texts.flips(name(before.best), name(after.best), points(after.lead))}
        </strong>{' '}
        {!isNothing(behind) && texts.chosenBehind(name(decision.chosen), points(behind))}
      </p>
      {changes.length === 0 && <p>{texts.nothing}</p>}
      <ul>
        {movedWords(moved, changes, options).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {overrides.map(
        (one) => one.kind === 'points' && <p key={one.id}>{words().overrides.record.stays(name(one.option))}</p>,
      )}
      <MovedTable decision={decision} revision={props.revision} changes={changes} moved={moved} />
      {changes.map((change) => {
        const what = texts.kinds[change.kind](change.name)
        return (
          <details key={`${change.kind} ${change.id}`}>
            <summary>{texts.differencesOf(what, change.differences.length)}</summary>
            <DifferenceTable caption={what} head={[texts.onRecord, texts.newest]} rows={change.differences} />
          </details>
        )
      })}
    </>
  )
}

/** Beliefs are not part of the points; that they changed is said all the same. */
function Beliefs(props: { decision: DecisionRecord; newest: Newest }) {
  const then = props.decision.snapshot.inputs
  const { options, overrides = [] } = props.decision.snapshot
  const now = props.newest.inputs && withoutOverridden(props.newest.inputs, options, overrides)
  const texts = words().decisions.again
  const found = now ? differences(then, now) : []
  if (found.length === 0) return null
  return (
    <details>
      <summary>{texts.beliefs(found.length)}</summary>
      <DifferenceTable caption={texts.beliefs(found.length)} head={[texts.onRecord, texts.newest]} rows={found} />
    </details>
  )
}

/** Names of what the record was made from and is not there any more; null where all is there. */
function goneWords({ snapshot }: DecisionRecord, newest: Newest): string | null {
  const { kinds } = words().decisions.again
  const names = [
    ...(newest.game ? [] : [kinds.game(snapshot.game.name)]),
    ...snapshot.options.flatMap(({ robot }) => (newest.robots[robot.id] ? [] : [kinds.design(robot.name)])),
    ...snapshot.options.flatMap(({ id, name }) => (newest.ways[id] ? [] : [kinds.option(name)])),
  ]
  return names.length > 0 ? [...new Set(names)].join(', ') : null
}
