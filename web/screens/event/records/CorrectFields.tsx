import { Checkbox, NativeSelect, Textarea, TextInput } from '@mantine/core'
import type { ReactNode } from 'react'
import { slotsOf } from '../../../../src/model/event/seats.ts'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { words } from '../../../words/catalogue.ts'
import { matchName, seatName } from '../names.ts'
import '../event.css'
import { TapList } from './TapList.tsx'
import { countKey, periods, type TypedRecord } from './typed.ts'

interface Fields {
  pack: StandsPack
  typed: TypedRecord
  problems: { [field: string]: string }
  change(next: Partial<TypedRecord>): void
}

/** Whom it is about: the match, and a robot of it or another one of the event. */
export function AboutFields({ pack, typed, change }: Fields) {
  const texts = words().records.correct
  const match = pack.matches.find(({ id }) => id === typed.match)
  const here = match ? slotsOf(match) : []
  const inMatch = new Set(here.map(({ slot }) => slot.team))
  const others = pack.event.teams.filter(({ team }) => !inMatch.has(team))
  const known = inMatch.has(typed.team) || others.some(({ team }) => team === typed.team)
  return (
    <div className="slot-fields">
      <NativeSelect
        label={words().records.fields.match}
        value={typed.match}
        data={[
          { value: '', label: texts.outside },
          ...pack.matches.map((each) => ({ value: each.id, label: matchName(each) })),
          ...(typed.match === '' || match ? [] : [typed.match]),
        ]}
        onChange={(event) => change({ match: event.currentTarget.value })}
      />
      <NativeSelect
        label={texts.robot}
        value={typed.team}
        data={[
          ...here.map(({ seat, slot }) => ({ value: slot.team, label: texts.robotAt(seatName(seat), slot.team) })),
          ...others.map(({ team, name }) => ({ value: team, label: name ? `${team} ${name}` : team })),
          ...(known ? [] : [typed.team]),
        ]}
        onChange={(event) => change({ team: event.currentTarget.value })}
      />
      <Checkbox
        className="record-tick"
        label={texts.absent}
        checked={typed.absent}
        onChange={(event) => change({ absent: event.currentTarget.checked })}
      />
    </div>
  )
}

/** What it did: taps or counts, finish, fouls, and the rest. */
export function DoneFields(props: Fields) {
  const { pack, typed, problems, change } = props
  const game = pack.game.body
  const all = words().records
  const texts = all.correct
  const sheet = words().sheets.fields
  type Text = 'minor' | 'major' | 'defence' | 'lost' | 'stopped' | 'departed'
  const text = (key: Text, label: string, inputMode: 'numeric' | 'decimal' = 'decimal') => (
    <TextInput
      key={key}
      label={label}
      inputMode={inputMode}
      value={typed[key]}
      error={problems[key]}
      onChange={(event) => change({ [key]: event.currentTarget.value })}
    />
  )
  const count = (key: string, label: string) => (
    <TextInput
      key={key}
      label={label}
      inputMode="numeric"
      value={typed.counts[key] ?? ''}
      error={problems[key]}
      onChange={(event) => change({ counts: { ...typed.counts, [key]: event.currentTarget.value } })}
    />
  )
  const group = (legend: string, children: ReactNode) => (
    <fieldset className="stack">
      <legend>{legend}</legend>
      {children}
    </fieldset>
  )
  const finishes = [
    { value: '', label: all.none },
    ...game.finishes.map(({ id, name }) => ({ value: id, label: name })),
  ]
  return (
    <>
      <div className="slot-fields">
        <NativeSelect
          label={texts.left}
          value={typed.left}
          data={[
            { value: '', label: all.notSeen },
            { value: 'yes', label: all.yes },
            { value: 'no', label: all.no },
          ]}
          onChange={(event) => change({ left: event.currentTarget.value as TypedRecord['left'] })}
        />
      </div>
      {typed.taps
        ? group(
            all.fields.taps,
            <TapList game={game} taps={typed.taps} problems={problems} change={(taps) => change({ taps })} />,
          )
        : group(
            texts.counts,
            <div className="slot-fields">
              {game.goals.flatMap(({ id, name }) =>
                periods.flatMap((period) =>
                  (['scored', 'missed'] as const).map((what) =>
                    count(countKey(id, period, what), sheet.count[what](name, sheet.period[period])),
                  ),
                ),
              )}
            </div>,
          )}
      {group(
        texts.finish,
        <div className="slot-fields">
          {(['attempted', 'achieved'] as const).map((which) => (
            <NativeSelect
              key={which}
              label={sheet.finish[which]}
              value={typed[which]}
              data={finishes}
              onChange={(event) => change({ [which]: event.currentTarget.value })}
            />
          ))}
        </div>,
      )}
      {group(
        texts.fouls,
        <div className="slot-fields">
          {text('minor', sheet.foul.minor, 'numeric')}
          {text('major', sheet.foul.major, 'numeric')}
        </div>,
      )}
      <details open={['defence', 'lost', 'stopped', 'departed'].some((key) => problems[key]) || undefined}>
        <summary>{texts.more}</summary>
        <div className="slot-fields">
          {text('defence', texts.defenceSeconds)}
          <NativeSelect
            label={all.fields.defended}
            value={typed.received}
            data={[
              { value: '', label: all.notSeen },
              ...(['none', 'some', 'heavy'] as const).map((value) => ({ value, label: all.received[value] })),
            ]}
            onChange={(event) => change({ received: event.currentTarget.value as TypedRecord['received'] })}
          />
          {text('lost', texts.lost)}
          {text('stopped', texts.stopped)}
          {text('departed', texts.departed)}
        </div>
      </details>
    </>
  )
}

export function NoteField({ typed, change }: Pick<Fields, 'typed' | 'change'>) {
  return (
    <Textarea
      label={words().records.correct.note}
      value={typed.note}
      maxLength={2000}
      autosize
      minRows={2}
      onChange={(event) => change({ note: event.currentTarget.value })}
    />
  )
}
