import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import type { Place } from '../../data/difference.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { words } from '../../words/catalogue.ts'
import { copied, following, freeMechanismId, isDriveAt, mechanismById, withMechanism } from './edits.ts'
import { firstMechanism } from './first.ts'
import { gameLegs } from './gameLegs.ts'
import { kindOf, type MechanismKind, mechanismKinds } from './inputs.ts'
import { useTimings } from './TimingContext.ts'
import { useShelf } from './useShelf.ts'

/** Choosing what gives a stage, or the drive, its time: a new mechanism, one that the robot has, or a copy of it. */
export function ChooseMechanism(props: { at: Place; name: string | null }) {
  const { at, name } = props
  const { game, robot, onOpen } = useTimings()
  const edit = useEdit()
  const shelf = useShelf()
  const texts = words().timings
  const isDrive = isDriveAt(at)
  const kinds = mechanismKinds.filter((kind) => (kind === 'drive') === isDrive)
  const [kind, setKind] = useState<MechanismKind>(kinds[0]!)
  const [busy, setBusy] = useState(false)
  const make = async () => {
    setBusy(true)
    const named = { id: freeMechanismId(robot, kind), name: name?.trim() || texts.kinds[kind] }
    // Without them the drive begins with a distance alone, and says so.
    const legs = isDrive ? await gameLegs(game, robot).catch(() => undefined) : undefined
    const today = new Date().toISOString().slice(0, 10)
    const mechanism = firstMechanism(kind, named, { game, robot, shelf: shelf.parts, legs, today })
    setBusy(false)
    edit.set(['robot'], withMechanism(robot, mechanism, at))
    onOpen(mechanism.id)
  }
  return (
    <div className="stack no-print">
      <p>{isDrive ? texts.section.noneDrive : texts.section.none}</p>
      <div className="row choices" style={{ alignItems: 'end' }}>
        {!isDrive && (
          <NativeSelect
            label={texts.section.kind}
            value={kind}
            data={kinds.map((value) => ({ value, label: texts.kinds[value] }))}
            onChange={(event) => setKind(event.currentTarget.value as MechanismKind)}
          />
        )}
        <Button loading={busy || !(shelf.loaded || shelf.error)} onClick={() => void make()}>
          {texts.section.make}
        </Button>
      </div>
      <p className="soft small">{isDrive ? texts.section.makesDrive : texts.section.makes}</p>
      <Existing {...props} />
    </div>
  )
}

/** Mechanisms of this robot that can give the time. */
function Existing({ at, name }: { at: Place; name: string | null }) {
  const { robot, onOpen } = useTimings()
  const edit = useEdit()
  const texts = words().timings
  const able = (robot.mechanisms ?? []).filter(({ calculator }) => (calculator === 'drive') === isDriveAt(at))
  const [chosen, setChosen] = useState<string | null>(null)
  const mechanism = mechanismById(robot, chosen ?? able[0]?.id) ?? able[0]
  if (!mechanism) return null
  const copy = () => {
    const id = freeMechanismId(robot, kindOf(mechanism))
    edit.set(['robot'], withMechanism(robot, copied(mechanism, id, name?.trim() || mechanism.name), at))
    onOpen(id)
  }
  return (
    <>
      <div className="row choices" style={{ alignItems: 'end' }}>
        <NativeSelect
          label={texts.section.existing}
          value={mechanism.id}
          data={able.map((each) => ({ value: each.id, label: each.name }))}
          onChange={(event) => setChosen(event.currentTarget.value)}
        />
        <Button variant="default" onClick={() => edit.set(['robot'], following(robot, mechanism.id, at))}>
          {texts.section.link}
        </Button>
        <Button variant="default" onClick={copy}>
          {texts.section.copy}
        </Button>
      </div>
      <p className="soft small">{texts.section.copyHelp}</p>
    </>
  )
}
