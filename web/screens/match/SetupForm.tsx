import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import { RobotSign, type Side } from '../../charts/RobotSign.tsx'
import { readNumber, writeNumber } from '../../shell/fields/parse.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import type { Ways } from './MatchDesk.tsx'
import { positionName, sideName, signOf } from './names.ts'
import { isComplete, largestSeed, lengths, type MatchSetup, nobody, precisions, type Slots, withSlot } from './setup.ts'

/** Who plays, where, how often and on which luck. */
export function SetupForm(props: {
  setup: MatchSetup
  ways: Ways
  levels: readonly string[]
  onChange(next: Partial<MatchSetup>): void
  undo: (() => void) | null
}) {
  const { setup, ways, levels, onChange, undo } = props
  const text = words().match.setup
  return (
    <section className="sheet stack" aria-labelledby="match-setup">
      <h2 id="match-setup">{text.title}</h2>
      <p className="soft small no-print">{text.help}</p>
      <div className="columns">
        {(['ours', 'theirs'] as const).map((side) => (
          <Alliance
            key={side}
            side={side}
            legend={sideName(side)}
            slots={setup[side]}
            ways={ways}
            onChange={(slots) => onChange({ [side]: slots })}
          />
        ))}
      </div>
      {!isComplete(setup) && <p role="status">{text.incomplete}</p>}
      <div className="row no-print">
        <Button variant="default" onClick={() => onChange({ ours: setup.theirs, theirs: setup.ours })}>
          {text.swap}
        </Button>
        <Button variant="default" onClick={() => onChange({ theirs: setup.ours })}>
          {text.mirror}
        </Button>
        <Button variant="default" onClick={() => onChange({ ours: nobody, theirs: nobody, other: null })}>
          {text.clear}
        </Button>
        <Button variant="default" disabled={!undo} onClick={() => undo?.()}>
          {text.undo}
        </Button>
      </div>
      <div className="row" style={{ alignItems: 'start' }}>
        {levels.length > 0 && (
          <NativeSelect
            label={text.level}
            value={setup.level ?? ''}
            data={[...levels]}
            onChange={(event) => onChange({ level: event.currentTarget.value })}
          />
        )}
        <NativeSelect
          label={text.matches}
          value={String(setup.replicates)}
          data={Object.entries(lengths).map(([name, count]) => ({
            value: String(count),
            label: text[name as keyof typeof lengths],
          }))}
          onChange={(event) => onChange({ replicates: Number(event.currentTarget.value) })}
        />
        <Precision
          key={setup.precision ?? ''}
          precision={setup.precision}
          onChange={(precision) => onChange({ precision })}
        />
        <Luck key={setup.seed} seed={setup.seed} onChange={(seed) => onChange({ seed })} />
      </div>
    </section>
  )
}

/** Three positions of an alliance. `than`: the same positions of another line-up, from which differences are marked. */
export function Alliance(props: {
  side: Side
  legend: string
  slots: Slots
  ways: Ways
  than?: Slots
  onChange(slots: Slots): void
}) {
  const { side, slots, ways, than, onChange } = props
  const text = words().match
  return (
    <fieldset className={`stack alliance ${side}`}>
      <legend>{props.legend}</legend>
      {slots.map((id, position) => {
        const name = positionName(side, position)
        const changed = than !== undefined && than[position] !== id
        return (
          <div key={name} className="slot">
            <RobotSign side={side} sign={signOf(position + (side === 'ours' ? 0 : 3))} />
            <NativeSelect
              label={changed ? `${name} (${text.whatIf.changed})` : name}
              value={id ?? ''}
              data={[
                { value: '', label: text.setup.nobody },
                ...ways.map((way) => ({ value: way.id, label: way.name })),
              ]}
              onChange={(event) => onChange(withSlot(slots, position, event.currentTarget.value || null))}
            />
          </div>
        )
      })}
    </fieldset>
  )
}

/** How precisely the chance to win has to be known before no more matches are played; empty: all are played. */
function Precision(props: { precision: number | null; onChange(precision: number | null): void }) {
  const { precision, onChange } = props
  const text = words().match.setup
  const rules = { ...precisions, percent: true }
  const [typed, setTyped] = useState<string | null>(null)
  const read = typed === null || typed.trim() === '' ? null : readNumber(typed, rules)
  const take = () => {
    if (typed === null || (read && 'error' in read)) return
    const value = read ? read.value : null
    if (value !== precision) onChange(value)
  }
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault()
        take()
      }}
    >
      <TextInput
        label={text.precision}
        description={text.precisionHelp}
        inputMode="decimal"
        autoComplete="off"
        w={230}
        value={typed ?? writeNumber(precision, rules)}
        error={read && 'error' in read ? read.error : null}
        onChange={(event) => setTyped(event.currentTarget.value)}
        onBlur={take}
      />
    </form>
  )
}

/** The seed: typed, or the next one. */
function Luck(props: { seed: number; onChange(seed: number): void }) {
  const { seed, onChange } = props
  const text = words().match.setup
  const [typed, setTyped] = useState<string | null>(null)
  const read = typed === null ? null : readNumber(typed, { min: 0, max: largestSeed, whole: true })
  const take = () => {
    if (read && 'value' in read && read.value !== seed) onChange(read.value)
  }
  return (
    <form
      className="row"
      style={{ alignItems: 'start' }}
      onSubmit={(event) => {
        event.preventDefault()
        take()
      }}
    >
      <TextInput
        label={text.seed}
        description={text.seedHelp}
        inputMode="numeric"
        autoComplete="off"
        w={210}
        value={typed ?? plain(seed)}
        error={read && 'error' in read ? read.error : null}
        onChange={(event) => setTyped(event.currentTarget.value)}
        onBlur={take}
      />
      <Button className="no-print beside-field" variant="default" onClick={() => onChange((seed + 1) % largestSeed)}>
        {text.otherLuck}
      </Button>
    </form>
  )
}
