import { NativeSelect } from '@mantine/core'
import { useMemo, useState } from 'react'
import type { Game, Robot } from '../../../../src/model/documents/types.ts'
import { assembleOption, firstOption } from '../../../data/assemble.ts'
import { words } from '../../../words/catalogue.ts'
import { points, signedPoints } from '../../../words/format.ts'
import { useModel } from '../../../worker/useModel.ts'
import { useWaysToPlay } from '../../designs/useWaysToPlay.ts'

/** What the moved stages do to a match: expected points of the design and of the copy, by the same way to play. */
export function BeforeAfter(props: { game: Game; design: string; before: Robot; after: Robot | null }) {
  const texts = words().fieldCheck.back
  const { game, before, after } = props
  const ways = useWaysToPlay(props.design)
  const [chosen, setChosen] = useState<string | null>(null)
  const way = ways.data?.find(({ id }) => id === chosen) ?? ways.data?.[0]
  const ready = ways.data !== undefined
  const asked = useMemo(() => {
    const played = (robot: Robot) => (way ? assembleOption(way.body, robot) : { ...firstOption(game, before), robot })
    return ready && after ? { before: { game, option: played(before) }, after: { game, option: played(after) } } : null
  }, [ready, way, game, before, after])
  const [then, now] = [useModel('quick', asked?.before ?? null), useModel('quick', asked?.after ?? null)]
  if (!after) return <p className="soft">{texts.chooseFirst}</p>
  const failed = then.error ?? now.error
  const known = then.data && now.data && !then.isPlaceholderData && !now.isPlaceholderData
  return (
    <>
      {ways.data && ways.data.length > 1 && (
        <NativeSelect
          label={texts.way}
          value={way?.id ?? ''}
          data={ways.data.map(({ id, name }) => ({ value: id, label: name }))}
          onChange={({ currentTarget }) => setChosen(currentTarget.value)}
          maw={360}
        />
      )}
      {failed ? (
        <p role="alert">{texts.notPlanned(failed.message)}</p>
      ) : (
        <p role="status">
          {known
            ? texts.points(
                points(then.data.total),
                points(now.data.total),
                signedPoints(now.data.total - then.data.total),
              )
            : texts.planning}
        </p>
      )}
    </>
  )
}
