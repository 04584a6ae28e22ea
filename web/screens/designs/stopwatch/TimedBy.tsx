import { Button } from '@mantine/core'
import { Link } from 'wouter'
import type { TimedLeg, TimedPart } from '../../../../src/model/documents/timing.ts'
import { mean } from '../../../../src/model/duration/index.ts'
import type { LegRequest } from '../../../../src/model/leg/types.ts'
import { measured } from '../../../../src/model/samples/index.ts'
import { same } from '../../../data/difference.ts'
import { useList, useStored } from '../../../data/documents.ts'
import { valueAt } from '../../../data/place.ts'
import { forgetTexts, useEdit } from '../../../shell/fields/EditContext.tsx'
import { words } from '../../../words/catalogue.ts'
import { seconds } from '../../../words/format.ts'
import { timedKey, timingId } from './parts.ts'

/** The leg of a trip on the strip, as timings name it. */
export const timedLeg = (request: LegRequest): TimedLeg =>
  request.kind === 'collect'
    ? { kind: 'collect', source: request.source }
    : request.kind === 'score'
      ? { kind: 'score', goal: request.goal, entry: request.entry }
      : { kind: 'finish', finish: request.finish }

/** Beside a time: the stopwatch for it, and the times that were taken, to be taken over. */
export function TimedBy(props: {
  design: string
  leg: TimedLeg
  part: TimedPart
  place: readonly (string | number)[]
}) {
  const { design, leg, part, place } = props
  const edit = useEdit()
  const texts = words().stopwatch.fromDesign
  const id = timingId(design, leg, part)
  const list = useList('timing')
  const known = list.data?.some((entry) => entry.id === id) ?? false
  const stored = useStored('timing', known ? id : null)
  const trials = stored.data?.body.trials ?? []
  const duration = measured(trials)
  const struck = trials.filter((trial) => trial.struck !== null).length
  const used = duration !== null && same(valueAt(edit.document, place), duration)
  return (
    <div className="row timed-by">
      <Link href={`/designs/${design}/stopwatch?what=${encodeURIComponent(timedKey(leg, part))}`}>{texts.link}</Link>
      {duration && (
        <span>
          {texts.have({ count: duration.seconds.length, mean: seconds(mean(duration)), struck })} {used && texts.used}
        </span>
      )}
      {!duration && trials.length > 0 && <span className="soft">{texts.few(trials.length - struck)}</span>}
      {duration && !used && !edit.readOnly && (
        <Button
          size="compact-md"
          variant="default"
          onClick={() => {
            forgetTexts(edit, place)
            edit.set(place, duration)
          }}
        >
          {texts.use}
        </Button>
      )}
    </div>
  )
}
