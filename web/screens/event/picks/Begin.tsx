import { Button, Checkbox, NumberInput, Textarea } from '@mantine/core'
import { useState } from 'react'
import type { SelectionRules } from '../../../../src/model/picks/selection/index.ts'
import type { EventPack } from '../../../data/eventPack.ts'
import type { SelectionLog } from '../../../data/selection.ts'
import { type Typed, useTyped } from '../../../data/useTyped.ts'
import { words } from '../../../words/catalogue.ts'
import { KeptNote } from '../KeptNote.tsx'
import { seedsBy, usualRules } from './rules.ts'

interface Form {
  rules: SelectionRules
  seeds: string
}

/** What was announced: rules and seeds. With it the selection begins. */
export function Begin(props: { pack: EventPack; log: SelectionLog }) {
  const { pack, log } = props
  const texts = words().picks
  const { kept, ...form } = useTyped(`picks/${pack.event.id}/begin`, freshFor(pack))
  const [open, setOpen] = useState(kept)
  return (
    <details
      className="sheet stack no-print"
      open={kept || undefined}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{texts.begin}</summary>
      {/* Drawn when it is opened: the order above is waited for. */}
      {open && <Rules pack={pack} log={log} form={{ kept, ...form }} />}
    </details>
  )
}

const freshFor = (pack: EventPack): Form => ({ rules: usualRules(pack.event), seeds: seedsBy(pack).join('\n') })

function Rules(props: { pack: EventPack; log: SelectionLog; form: Typed<Form> }) {
  const { pack, log } = props
  const texts = words().picks
  const { typed, type, forget, kept } = props.form
  const [tried, setTried] = useState(false)
  const { rules } = typed
  const seeds = typed.seeds.split(/[\s,;]+/).filter(Boolean)
  const fault = seedFault(seeds, pack, rules)
  const set = (change: Partial<SelectionRules>) => type({ ...typed, rules: { ...rules, ...change } })
  const begin = () => {
    setTried(true)
    if (fault) return
    log.write({ kind: 'begins', rules, seeds })
    forget()
  }
  const number = (value: number | string, fallback: number) => (typeof value === 'number' ? value : fallback)
  return (
    <>
      <p>{texts.beginHow}</p>
      <KeptNote kept={kept} forget={forget} />
      <div className="row">
        <NumberInput
          label={texts.allianceCount}
          value={rules.alliances}
          min={2}
          max={32}
          clampBehavior="strict"
          onChange={(value) => set({ alliances: number(value, rules.alliances) })}
        />
        <NumberInput
          label={texts.size}
          value={rules.size}
          min={3}
          max={6}
          clampBehavior="strict"
          onChange={(value) => set({ size: number(value, rules.size) })}
        />
      </div>
      <Checkbox
        label={texts.serpentine}
        checked={rules.serpentine}
        onChange={(event) => set({ serpentine: event.currentTarget.checked })}
      />
      <Checkbox
        label={texts.captainsInvitable}
        checked={rules.captainsInvitable}
        onChange={(event) => set({ captainsInvitable: event.currentTarget.checked })}
      />
      <Checkbox
        label={texts.mayBeCaptain}
        checked={rules.afterDeclining === 'captain'}
        onChange={(event) => set({ afterDeclining: event.currentTarget.checked ? 'captain' : 'out' })}
      />
      <Textarea
        label={texts.seeds}
        description={texts.seedsHow}
        autosize
        minRows={4}
        maxRows={12}
        value={typed.seeds}
        error={tried ? fault : null}
        onChange={(event) => type({ ...typed, seeds: event.currentTarget.value })}
      />
      <div>
        <Button onClick={begin}>{texts.beginNow}</Button>
      </div>
      <p className="soft small">{texts.rulesDecide}</p>
    </>
  )
}

function seedFault(seeds: readonly string[], { event }: EventPack, { alliances }: SelectionRules): string | null {
  const texts = words().picks
  const known = new Set(event.teams.map(({ team }) => team))
  const stranger = seeds.find((team) => !known.has(team))
  if (stranger !== undefined) return texts.unknownTeam(stranger)
  const twice = seeds.find((team, index) => seeds.indexOf(team) < index)
  if (twice !== undefined) return texts.twice(twice)
  return seeds.length < 2 * alliances ? texts.tooFew(seeds.length, alliances) : null
}
