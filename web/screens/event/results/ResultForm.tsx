import { Button, Checkbox, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import { positionOf } from '../../../../src/model/event/seats.ts'
import { type Alliance, alliances, type Match, type Result } from '../../../../src/model/scouting/types.ts'
import type { States, StoredMatch, StoredResult } from '../../../../src/store/types.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { Panel } from '../../../shell/Panel.tsx'
import { words } from '../../../words/catalogue.ts'
import type { EventPage } from '../EventFrame.tsx'
import { KeptNote } from '../KeptNote.tsx'
import { allianceName, matchName, seatName } from '../names.ts'
import { type Fields, fieldsOf, readSide } from './fields.ts'

/** The result of one match with its categories; also to correct it, and to take it back. */
export function ResultForm(props: {
  page: EventPage
  stored: StoredMatch
  before: StoredResult | undefined
  onClose: () => void
}) {
  const { page, stored, before, onClose } = props
  const { match } = stored
  const { game, entered } = page
  const texts = words().event.results
  // A panel is closed sooner than one thinks.
  const form = useTyped(`result/${page.event.id}/${match.id}/${before?.revision ?? 0}`, {
    fields: { red: fieldsOf(game, before?.result?.red), blue: fieldsOf(game, before?.result?.blue) },
    states: statesOf(match),
  })
  const { fields, states } = form.typed
  const [asking, setAsking] = useState(false)
  const [tried, setTried] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const read = { red: readSide(game, fields.red), blue: readSide(game, fields.blue) }
  const send = async (result: Result | null) => {
    setTrouble(null)
    const changed = JSON.stringify(states) !== JSON.stringify(statesOf(match))
    try {
      const entry = { match: match.id, base: before?.revision ?? 0, matchRevision: stored.revision, result }
      await entered.send([changed && result ? { ...entry, states } : entry])
      form.forget()
      onClose()
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  const save = () => {
    setTried(true)
    if ('side' in read.red && 'side' in read.blue)
      void send({ match: match.id, red: read.red.side, blue: read.blue.side })
  }
  const set = (alliance: Alliance, change: Partial<Fields>) =>
    form.type({ fields: { ...fields, [alliance]: { ...fields[alliance], ...change } }, states })
  return (
    <Panel title={texts.of(matchName(match))} open onClose={onClose}>
      <KeptNote {...form} />
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          save()
        }}
      >
        {alliances.map((alliance) => {
          const side = read[alliance]
          const problems = 'problems' in side ? side.problems : {}
          const own = fields[alliance]
          const text = (key: string, label: string) => (
            <TextInput
              key={key}
              label={label}
              aria-label={`${allianceName(alliance)}: ${label}`}
              inputMode="decimal"
              value={own.texts[key] ?? ''}
              error={tried || own.texts[key] ? problems[key] : null}
              onChange={(event) => set(alliance, { texts: { ...own.texts, [key]: event.currentTarget.value } })}
            />
          )
          return (
            <fieldset key={alliance} className="stack">
              <legend>{allianceName(alliance)}</legend>
              <div className="slot-fields">
                {(['total', 'autonomous', 'goals', 'finishes', 'fromFouls'] as const).map((key) =>
                  text(key, texts.categories[key]),
                )}
                {game.goals.map(({ id, name }) => text(`pieces.${id}`, texts.pieces(name)))}
              </div>
              {game.bonuses.length > 0 && (
                <div className="row">
                  {game.bonuses.map((bonus) => (
                    <Checkbox
                      key={bonus.id}
                      label={bonus.name}
                      aria-label={`${allianceName(alliance)}: ${bonus.name}`}
                      checked={own.bonuses.includes(bonus.id)}
                      onChange={(event) => {
                        const others = own.bonuses.filter((id) => id !== bonus.id)
                        set(alliance, { bonuses: event.currentTarget.checked ? [...others, bonus.id] : others })
                      }}
                    />
                  ))}
                </div>
              )}
              <div className="slot-fields">
                {match[alliance].map((slot, index) => (
                  <NativeSelect
                    key={slot.team}
                    label={texts.robot(slot.team)}
                    aria-label={`${seatName({ alliance, position: positionOf(slot, index) })}, ${slot.team}`}
                    value={states[alliance][index]!}
                    data={(['played', 'absent', 'disqualified'] as const).map((state) => ({
                      value: state,
                      label: words().event.form.states[state],
                    }))}
                    onChange={(event) => {
                      const state = event.currentTarget.value as States['red'][number]
                      form.type({ fields, states: { ...states, [alliance]: states[alliance].with(index, state) } })
                    }}
                  />
                ))}
              </div>
            </fieldset>
          )
        })}
        <p className="soft">{texts.help}</p>
        {trouble && (
          <p role="alert" className="loss">
            {trouble}
          </p>
        )}
        <div className="row">
          <Button type="submit" loading={entered.busy}>
            {texts.save}
          </Button>
          {before?.result && (
            <Button variant="default" onClick={() => (asking ? void send(null) : setAsking(true))}>
              {asking ? texts.reallyTakeBack : texts.takeBack}
            </Button>
          )}
        </div>
      </form>
    </Panel>
  )
}

/** Who is expected has played where there is a result. */
const statesOf = (match: Match): States => {
  const of = (alliance: Alliance) =>
    match[alliance].map(({ state }) => (state === 'expected' ? ('played' as const) : state))
  return { red: of('red'), blue: of('blue') }
}
