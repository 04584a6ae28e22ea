import { type Ground, groundOf } from '../../src/model/match/ground.ts'
import { blockSize } from '../../src/model/match/precision.ts'
import { addStated, noSums, StatedPlayer } from '../../src/model/match/stated/play.ts'
import { statedReport } from '../../src/model/match/stated/report.ts'
import type { Questions } from './protocol.ts'

type Asked = Questions['stated']['ask']

/** What robots can do is worked out once: an edit of one option leaves the others known. */
const player = new StatedPlayer()

/** Plays the matches `from` … `to − 1` of every option, `from` at the beginning of a block, and adds them to those before. */
export function playStated(
  asked: Asked,
  progress: (done: number, total: number) => void,
): Questions['stated']['answer'] {
  const { from, to, soFar, level, ...rest } = asked
  const request = { ...rest, level: level ?? undefined, replicates: to }
  const ground: Ground = groundOf(asked.game)
  const sums = soFar ?? noSums(request, ground)
  for (let block = from / blockSize; block * blockSize < to; block++) {
    for (const more of player.play(request, block, block + 1)) addStated(sums, more)
    progress(Math.min(to, (block + 1) * blockSize) - from, to - from)
  }
  return { soFar: sums, report: statedReport(request, ground, sums) }
}
