import { expect, test } from 'vitest'
import { planId } from '../../src/store/index.ts'
import type { By } from '../../src/store/types.ts'
import { agreed } from '../model/briefing/plans.ts'
import { match } from '../model/event/matches.ts'
import { scratchStore } from './scratch.ts'

const by: By = { person: null, device: null }
const event = 'harbour-days'

test('What was agreed is added to and never changed, and its id is the hash of what it says', async () => {
  let minute = 0
  const { store } = await scratchStore({ now: () => new Date(Date.UTC(2031, 2, 15, 10, minute++)) })
  const put = [match(1, 'A B C', 'D E F')]
  const { id } = put[0]!
  const [team, other] = [
    store.workspace(await store.ensureWorkspace('team')),
    store.workspace(await store.ensureWorkspace('other')),
  ]
  await team.events.edit(event, { put, remove: [], mark: (await team.events.matches(event)).mark, by })
  const first = await team.plans.agree(event, agreed(id))
  const second = await team.plans.agree(event, agreed(id, null))
  expect(await team.plans.of(event)).toEqual([first, second])
  const { id: named, ...content } = first!
  expect(planId(content)).toBe(named)
  expect(planId({ ...content, agreedAt: second!.agreedAt })).not.toBe(named)
  // A match that is in no schedule, and another team's event.
  expect(await team.plans.agree(event, agreed('none'))).toBeNull()
  expect(await other.plans.of(event)).toEqual([])
})
