import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Game, Option, Role } from '../../src/model/documents/types.ts'
import type { LineupRequest } from '../../src/model/match/lineup/index.ts'
import { projectRoot } from '../../src/root.ts'

const { game, options } = JSON.parse(
  readFileSync(join(projectRoot(), 'tests/reference/reference-breakwater.json'), 'utf8'),
) as { game: Game; options: Option[] }
const named = (id: string) => options.find((option) => option.id === id)!

const ours = ['cormorant-best', 'petrel-best', 'gannet-best'].map(named)
const rivals = ['cormorant-best', 'cormorant-skip', 'petrel-best', 'petrel-pier', 'gannet-keeper', 'dunlin-guess'].map(
  named,
)

/** What each of ours may do: goals, finishes, and for one of them marking. */
const rolesOf = ({ role }: Option): Role[] =>
  [['pier'], ['gantry'], ['pier', 'gantry'], ['lightship', 'pier'], ['pier', 'gantry', 'lightship']].map((goals) => ({
    ...role,
    goals,
  }))

/** 125 line-ups, of which 64 are played, against twelve settings of the rivals. */
export const search = (seed: number): LineupRequest => ({
  game,
  ours,
  theirs: Array.from({ length: 12 }, (_, k) => [0, 1, 2].map((i) => rivals[(k + i * (1 + (k % 2))) % rivals.length]!)),
  roles: ours.map(rolesOf),
  seed,
  objective: 'win',
})
