import { useState } from 'react'
import type { Game, Role } from '../../../../src/model/documents/types.ts'
import { type Bodies, useChanges } from '../../../data/documents.ts'
import { idFrom } from '../../../data/identity.ts'
import type { Ways } from '../MatchDesk.tsx'
import type { Slots } from '../setup.ts'
import { roleWords } from './FoundLineup.tsx'
import { sameRole } from './roles.ts'

export interface Taken {
  before: Slots
  after: Slots
  /** Ways to play that were made for it. */
  made: { id: string; name: string }[]
}

interface Planned {
  ours: string[]
  made: { id: string; name: string; body: Bodies['option'] }[]
}

/** A way to play for each role: the one that is there, or a new one that differs in its role alone. */
function plannedFor(of: { game: Game; ways: Ways; ours: Slots; roles: readonly Role[] }): Planned | null {
  const { game, ways, ours, roles } = of
  const known = ways.map(({ id, body }) => ({ id, body }))
  const made: Planned['made'] = []
  const slots = ours.map((id, position) => {
    const way = ways.find((one) => one.id === id)
    if (!way) return null
    const role = roles[position]!
    const alike = [...known, ...made].find(
      ({ body }) =>
        body.design === way.body.design && sameRole(body.option.role, role) && same(essence(body), essence(way.body)),
    )
    if (alike) return alike.id
    const name = `${way.name.split(/[,:]/)[0]}: ${roleWords(game, way.body.option, role)}`.slice(0, 100)
    const fresh = idFrom(name)
    made.push({ id: fresh, name, body: { ...way.body, option: { ...way.body.option, id: fresh, name, role } } })
    return fresh
  })
  return slots.every((id) => id !== null) ? { ours: slots, made } : null
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b)

/** What two ways to play have in common that differ in name and role alone. */
function essence({ option }: Bodies['option']) {
  const { id: _, name: __, role: ___, ...rest } = option
  return rest
}

/** Takes a line-up over into the set-up, with new ways to play where there are none yet, and back again. */
export function useTake(game: Game, ways: Ways, onChange: (next: { ours: Slots }) => void) {
  const { save, remove } = useChanges()
  const [taken, setTaken] = useState<Taken | null>(null)
  const [busy, setBusy] = useState(false)
  const [error, setError] = useState<Error | null>(null)
  const doing = async (work: () => Promise<void>) => {
    setBusy(true)
    setError(null)
    try {
      await work()
    } catch (failure) {
      setError(failure as Error)
    } finally {
      setBusy(false)
    }
  }
  const take = (ours: Slots, roles: readonly Role[]) =>
    doing(async () => {
      const planned = plannedFor({ game, ways, ours, roles })
      if (!planned) return
      for (const { id, name, body } of planned.made)
        await save.mutateAsync({ kind: 'option', id, name, body, base: null })
      const after = planned.ours as unknown as Slots
      setTaken({ before: ours, after, made: planned.made.map(({ id, name }) => ({ id, name })) })
      onChange({ ours: after })
    })
  const back = (of: Taken) =>
    doing(async () => {
      onChange({ ours: of.before })
      setTaken(null)
      for (const { id } of of.made) await remove.mutateAsync({ kind: 'option', id })
    })
  return { taken, busy, error, take, back }
}
