import { Button, Checkbox, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Game } from '../../../../src/model/documents/types.ts'
import { happenings } from '../../../../src/model/scouting/types.ts'
import { words } from '../../../words/catalogue.ts'
import { atGoals, atSources, type TypedTap } from './typed.ts'

const hasPlace = (what: TypedTap['what']) => atGoals.includes(what) || atSources.includes(what)

/** The taps of a record, each a line that can be changed, removed and put back. */
export function TapList(props: {
  game: Game
  taps: readonly TypedTap[]
  problems: { [field: string]: string }
  change(taps: TypedTap[]): void
}) {
  const { game, taps, change } = props
  const texts = words().records.correct
  const [removed, setRemoved] = useState<{ tap: TypedTap; index: number }[]>([])
  const last = removed.at(-1)
  const remove = (tap: TypedTap, index: number) => {
    setRemoved([...removed, { tap, index }])
    change(taps.toSpliced(index, 1))
  }
  const putBack = () => {
    if (!last) return
    setRemoved(removed.slice(0, -1))
    change(taps.toSpliced(last.index, 0, last.tap))
  }
  const add = () => {
    const key = Math.max(-1, ...taps.map((tap) => tap.key), ...removed.map(({ tap }) => tap.key)) + 1
    const at = taps.at(-1)?.at ?? ''
    change([...taps, { key, at, what: 'scored', place: game.goals[0]?.id ?? '', n: '', estimate: false, kept: null }])
  }
  return (
    <>
      <p className="soft">{texts.taps(taps.length)}</p>
      <ol className="tap-list">
        {taps.map((tap, index) => (
          <Tap
            key={tap.key}
            game={game}
            tap={tap}
            number={index + 1}
            problems={props.problems}
            change={(next) => change(taps.with(index, { ...tap, ...next }))}
            remove={() => remove(tap, index)}
          />
        ))}
      </ol>
      <div className="row">
        <Button variant="default" onClick={add}>
          {texts.add}
        </Button>
        {last && (
          <Button variant="default" onClick={putBack}>
            {texts.putBack}
          </Button>
        )}
      </div>
    </>
  )
}

function Tap(props: {
  game: Game
  tap: TypedTap
  number: number
  problems: { [field: string]: string }
  change(tap: Partial<TypedTap>): void
  remove(): void
}) {
  const { game, tap, number, problems, change } = props
  const texts = words().records.correct
  const places = atSources.includes(tap.what) ? game.sources : game.goals
  const unknown = tap.place !== '' && !places.some(({ id }) => id === tap.place)
  return (
    <li>
      <TextInput
        aria-label={texts.timeOf(number)}
        className="tap-number"
        inputMode="decimal"
        value={tap.at}
        error={problems[`tap ${tap.key} at`]}
        onChange={(event) => change({ at: event.currentTarget.value })}
      />
      <NativeSelect
        className="tap-what"
        aria-label={texts.whatOf(number)}
        value={tap.what}
        data={happenings.map((value) => ({ value, label: words().records.what[value] }))}
        onChange={(event) => {
          const what = event.currentTarget.value as TypedTap['what']
          // A goal is no source: what it was about is chosen anew where its kind is another.
          const same = atSources.includes(what) === atSources.includes(tap.what) && hasPlace(what)
          change({ what, place: same ? tap.place : '' })
        }}
      />
      {(hasPlace(tap.what) || tap.place !== '') && (
        <NativeSelect
          className="tap-where"
          aria-label={texts.whereOf(number)}
          value={tap.place}
          data={[
            { value: '', label: texts.nowhere },
            ...places.map(({ id, name }) => ({ value: id, label: name })),
            ...(unknown ? [tap.place] : []),
          ]}
          onChange={(event) => change({ place: event.currentTarget.value })}
        />
      )}
      {(hasPlace(tap.what) || tap.n !== '') && (
        <>
          <TextInput
            aria-label={texts.countOf(number)}
            className="tap-count"
            inputMode="numeric"
            placeholder="1"
            value={tap.n}
            error={problems[`tap ${tap.key} n`]}
            onChange={(event) => change({ n: event.currentTarget.value })}
          />
          <Checkbox
            label={texts.about}
            aria-label={texts.aboutOf(number)}
            checked={tap.estimate}
            onChange={(event) => change({ estimate: event.currentTarget.checked })}
          />
        </>
      )}
      <button
        type="button"
        className="plain-button"
        title={texts.remove}
        aria-label={texts.removeOf(number)}
        onClick={props.remove}
      >
        <span aria-hidden="true">✕</span>
      </button>
    </li>
  )
}
