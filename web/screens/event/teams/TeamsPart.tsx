import { Button, NativeSelect, Textarea, TextInput } from '@mantine/core'
import { useState } from 'react'
import { slotsOf } from '../../../../src/model/event/seats.ts'
import type { EventRecord } from '../../../../src/model/scouting/types.ts'
import { useChanges } from '../../../data/documents.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { Empty } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { listed } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { KeptNote } from '../KeptNote.tsx'
import { readTeams, writeTeams } from './readTeams.ts'

/** Teams and what else is settled before the first match. */
export function TeamsPart({ event, game, schedule, lead }: EventPage) {
  const texts = words().event.teams
  const { save } = useChanges()
  const { body, revision } = event
  const form = useTyped(`teams/${body.id}/${revision}`, {
    text: writeTeams(body.teams),
    name: body.name,
    startsOn: body.startsOn ?? '',
    level: body.level ?? '',
    size: String(body.playoff?.size ?? ''),
    own: body.own ?? '',
  })
  const { text, name, startsOn, level, size, own } = form.typed
  const set = (change: Partial<typeof form.typed>) => form.type({ ...form.typed, ...change })
  const [said, setSaid] = useState<{ trouble: string } | null>(null)
  const { teams, problems } = readTeams(text)
  const levels = [
    ...new Set(game.bonuses.flatMap(({ atLeast }) => (typeof atLeast === 'number' ? [] : Object.keys(atLeast)))),
  ]
  const next: EventRecord = {
    format: 1,
    id: body.id,
    name: name.trim(),
    game: body.game,
    teams,
    ...(level === '' ? {} : { level }),
    ...(startsOn === '' ? {} : { startsOn }),
    // Chosen where the estimates are.
    ...(body.halfLife === undefined ? {} : { halfLife: body.halfLife }),
    ...(body.earlier && { earlier: body.earlier }),
    ...(body.lessons !== undefined && { lessons: body.lessons }),
    ...(own === '' ? {} : { own }),
    ...(body.drivers && { drivers: body.drivers }),
    ...(size === ''
      ? {}
      : { playoff: { ...(body.playoff ?? { format: 'double', alliances: 8 }), size: Number(size) } }),
  }
  const dirty =
    JSON.stringify({ ...body }) !== JSON.stringify({ ...body, ...next }) ||
    (size === '' && body.playoff) ||
    own !== (body.own ?? '')
  const listedNow = new Set(teams.map(({ team }) => team))
  const missing = [
    ...new Set(
      schedule.matches
        .flatMap(({ match }) => slotsOf(match).map(({ slot }) => slot.team))
        .filter((team) => !listedNow.has(team)),
    ),
  ]
  const keep = async () => {
    setSaid(null)
    try {
      const outcome = await save.mutateAsync({
        kind: 'event',
        id: body.id,
        name: next.name,
        body: next,
        base: revision,
      })
      if ('conflict' in outcome) setSaid({ trouble: texts.conflict })
      else form.forget()
    } catch (error) {
      setSaid({ trouble: (error as Error).message })
    }
  }
  if (!lead)
    return (
      <section className="sheet stack" aria-labelledby="teams">
        <h2 id="teams">{words().event.parts.teams}</h2>
        <ul>
          {body.teams.map((each) => (
            <li key={each.team}>
              <strong>{each.team}</strong> {each.name}
            </li>
          ))}
        </ul>
      </section>
    )
  return (
    <section className="sheet stack" aria-labelledby="teams">
      <h2 id="teams">{words().event.parts.teams}</h2>
      {body.teams.length === 0 && (
        <Empty title={texts.empty}>
          <p>{texts.emptyHow}</p>
        </Empty>
      )}
      <KeptNote {...form} />
      <Textarea
        label={texts.label}
        description={texts.help}
        rows={Math.min(30, Math.max(8, teams.length + 1))}
        spellCheck={false}
        value={text}
        error={problems.length > 0 ? problems.slice(0, 5).join(' ') : null}
        onChange={(change) => set({ text: change.currentTarget.value })}
      />
      <p className="soft" role="status">
        {texts.count(teams.length)}
      </p>
      {missing.length > 0 && <p className="loss">{texts.missing(listed(missing))}</p>}
      <div className="row" style={{ alignItems: 'start' }}>
        <TextInput
          label={words().event.fresh.name}
          value={name}
          maxLength={200}
          error={name.trim() === '' ? words().event.fresh.noName : null}
          onChange={(change) => set({ name: change.currentTarget.value })}
        />
        <NativeSelect
          label={texts.own}
          description={texts.ownHelp}
          value={own}
          data={[
            { value: '', label: texts.noOwn },
            ...[...new Set([...teams.map(({ team }) => team), ...(own === '' ? [] : [own])])],
          ]}
          onChange={(change) => set({ own: change.currentTarget.value })}
        />
        <TextInput
          label={words().event.fresh.day}
          type="date"
          value={startsOn}
          onChange={(change) => set({ startsOn: change.currentTarget.value })}
        />
        {levels.length > 0 && (
          <NativeSelect
            label={texts.level}
            description={texts.levelHelp}
            value={level}
            data={[{ value: '', label: texts.noLevel }, ...levels.map((each) => ({ value: each, label: each }))]}
            onChange={(change) => set({ level: change.currentTarget.value })}
          />
        )}
        <NativeSelect
          label={texts.size}
          value={size}
          data={[
            { value: '', label: texts.noPlayoffs },
            { value: '3', label: '3' },
            { value: '4', label: texts.four },
          ]}
          onChange={(change) => set({ size: change.currentTarget.value })}
        />
      </div>
      <div className="row">
        <Button
          disabled={!dirty || problems.length > 0 || name.trim() === ''}
          loading={save.isPending}
          onClick={() => void keep()}
        >
          {texts.save}
        </Button>
        {!dirty && <span className="soft">{texts.saved(revision)}</span>}
      </div>
      {said && (
        <p role="alert" className="loss">
          {said.trouble}
        </p>
      )}
    </section>
  )
}
