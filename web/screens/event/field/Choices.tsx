import { NativeSelect } from '@mantine/core'
import type { Stored } from '../../../data/documents.ts'
import type { FieldQuestion, RunKind, TimedTeam } from '../../../data/fieldCheck.ts'
import { words } from '../../../words/catalogue.ts'
import type { EventPage } from '../EventFrame.tsx'
import type { Frozen } from './useFrozen.ts'

/** Which robot, which design, which runs. */
export function Choices(props: {
  page: EventPage
  timed: readonly TimedTeam[]
  designs: readonly Stored<'design'>[]
  frozen: readonly Frozen[]
  chosen: FieldQuestion
  choose(next: Partial<FieldQuestion>): void
}) {
  const { page, timed, chosen, choose } = props
  const texts = words().fieldCheck
  const nameOf = (team: string) => page.event.body.teams.find((each) => each.team === team)?.name ?? ''
  const teams = timed.map(({ team, matches, practice }) => ({
    value: team,
    label: texts.teamChoice(team, nameOf(team), matches, practice),
  }))
  // The address may name a robot without timelines.
  if (!timed.some(({ team }) => team === chosen.team))
    teams.unshift({ value: chosen.team, label: texts.teamChoice(chosen.team, nameOf(chosen.team), 0, 0) })
  const now = props.designs.map(({ id, name }) => ({ value: JSON.stringify([id, null]), label: name }))
  const decisions = [...new Map(props.frozen.map(({ decision }) => [decision.id, decision.name]))].map(
    ([id, name]) =>
      [
        name,
        props.frozen
          .filter(({ decision }) => decision.id === id)
          .map(({ robot }) => ({ value: JSON.stringify([robot.id, id]), label: texts.robotThen(robot.name, name) })),
      ] as const,
  )
  return (
    <div className="row field-choices no-print">
      <NativeSelect
        label={texts.robot}
        value={chosen.team}
        data={teams}
        onChange={({ currentTarget }) => choose({ team: currentTarget.value })}
      />
      <NativeSelect
        label={texts.design}
        value={JSON.stringify([chosen.design, chosen.decision])}
        data={[
          ...(props.frozen.length === 0 ? now : [{ group: texts.asNow, items: now }]),
          ...decisions.map(([name, items]) => ({ group: texts.asDecided(name), items })),
        ]}
        onChange={({ currentTarget }) => {
          const [design, decision] = JSON.parse(currentTarget.value) as [string, string | null]
          choose({ design, decision })
        }}
      />
      <NativeSelect
        label={texts.runs}
        value={chosen.only ?? ''}
        data={[
          { value: '', label: texts.runsOf.all },
          { value: 'match', label: texts.runsOf.match },
          { value: 'practice', label: texts.runsOf.practice },
        ]}
        onChange={({ currentTarget }) => choose({ only: (currentTarget.value || null) as RunKind | null })}
      />
    </div>
  )
}
