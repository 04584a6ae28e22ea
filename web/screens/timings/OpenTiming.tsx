import { Button } from '@mantine/core'
import { useEffect, useMemo, useRef } from 'react'
import { within } from '../../../src/model/documents/checkIds.ts'
import type { Game, Option, Robot } from '../../../src/model/documents/types.ts'
import { EditProvider, useEdit } from '../../shell/fields/EditContext.tsx'
import { useUnits } from '../../units/system.ts'
import { words } from '../../words/catalogue.ts'
import { listed } from '../../words/format.ts'
import { usersOf } from './edits.ts'
import { kindOf } from './inputs.ts'
import { mechanismProblems } from './problems.ts'
import { TimingPanel } from './TimingPanel.tsx'
import { userWords } from './userWords.ts'
import './timings.css'

/** The mechanism that is open beneath the strip. */
export default function OpenTiming(props: {
  id: string
  robot: Robot
  game: Game
  option: Option
  /** Which revision the numbers are of. */
  source: string
  /** Address of the design's stopwatch. */
  stopwatch: string
  onClose(): void
}) {
  const { id, robot, game, option } = props
  const edit = useEdit()
  const texts = words().timings.panel
  const heading = useRef<HTMLHeadingElement>(null)
  const system = useUnits()
  const index = (robot.mechanisms ?? []).findIndex((mechanism) => mechanism.id === id)
  const mechanism = robot.mechanisms?.[index]
  // Sentences hold numbers in the units chosen.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  const problems = useMemo(() => within(['robot'], mechanismProblems(robot)), [robot, system])
  // biome-ignore lint/correctness/useExhaustiveDependencies: another mechanism is another panel
  useEffect(() => heading.current?.focus(), [id])
  if (!mechanism) return null
  const users = usersOf(robot, id).map((user) => userWords(user, game))
  return (
    <section className="timing stack" aria-labelledby="timing-title" data-testid="timing">
      <div className="row spread">
        <h4 id="timing-title" ref={heading} tabIndex={-1}>
          {texts.title(mechanism.name)}
        </h4>
        <Button className="no-print" size="compact-md" variant="default" onClick={props.onClose}>
          {texts.close}
        </Button>
      </div>
      <p className="soft small">
        {words().timings.kinds[kindOf(mechanism)]}. {users.length > 0 ? texts.users(listed(users)) : texts.noUsers}
      </p>
      <EditProvider value={{ ...edit, problems: [...edit.problems, ...problems] }}>
        <TimingPanel {...{ mechanism, index, game, option }} source={props.source} stopwatch={props.stopwatch} />
      </EditProvider>
    </section>
  )
}
