import {
  type ComparisonRecord,
  checkGame,
  checkOption,
  checkQuickSheet,
  checkRobot,
  checkTiming,
  type DecisionRecord,
  type DesignRecord,
  type DocumentKind,
  type OptionRecord,
  type OptionReference,
  overriddenThing,
  type QuickSheetRecord,
  type ReadingRecord,
  type Reference,
  type TimingRecord,
  within,
} from '../../model/documents/index.ts'
import type { Path, Problem } from '../../model/errors.ts'
import type { EventRecord } from '../../model/scouting/index.ts'
import type { WorkspaceStore } from '../../store/types.ts'
import { found } from '../sentences.ts'
import type { Bodies } from './kinds.ts'
import { missing, read } from './read.ts'
import { partsOf, resolved } from './resolve.ts'

async function checkDesign(design: DesignRecord, workspace: WorkspaceStore): Promise<Problem[]> {
  const game = await read(workspace, 'game', { id: design.game })
  if (game) return within(['robot'], checkRobot(game.body, design.robot))
  return [{ path: ['game'], ...missing('game', { id: design.game }) }]
}

async function checkOptionRecord(record: OptionRecord, workspace: WorkspaceStore): Promise<Problem[]> {
  const parts = await partsOf(workspace, record)
  if ('message' in parts) return [parts]
  const problems = checkOption(parts.game.body, resolved(record, parts).option)
  return within(['option'], problems)
}

async function checkReference(
  { id, revision }: Reference,
  kind: DocumentKind,
  at: { path: Path; workspace: WorkspaceStore },
): Promise<Problem[]> {
  if (await at.workspace.get(kind, id, revision)) return []
  return [{ path: at.path, ...missing(kind, { id, revision }) }]
}

async function checkComparison(record: ComparisonRecord, workspace: WorkspaceStore): Promise<Problem[]> {
  const { field, objective = 'points' } = record
  const named = (pairs: readonly OptionReference[], path: Path) =>
    pairs.flatMap(({ option, design }, index) => [
      checkReference(option, 'option', { path: [...path, index, 'option'], workspace }),
      checkReference(design, 'design', { path: [...path, index, 'design'], workspace }),
    ])
  const references = await Promise.all([
    checkReference(record.game, 'game', { path: ['game'], workspace }),
    ...named(record.options, ['options']),
    ...named(field?.partners ?? [], ['field', 'partners']),
    ...named(field?.opponents ?? [], ['field', 'opponents']),
  ])
  const ids = record.inputs.map(({ id }) => id)
  const twice = ids.findIndex((id, index) => ids.indexOf(id) < index)
  const problems = references.flat()
  if (twice >= 0) {
    problems.push(found(['inputs', twice, 'id'], { code: 'inputTwice', parts: { id: ids[twice] as string } }))
  }
  if (objective !== 'points' && !field) problems.push(found(['field'], { code: 'fieldMissing', parts: {} }))
  problems.push(...checkOverrides(record))
  if (record.breakEven !== null && !ids.includes(record.breakEven)) {
    problems.push(found(['breakEven'], { code: 'noInput', parts: { id: record.breakEven } }))
  }
  return problems
}

/** An override is about something that is compared, and nothing is overridden twice. */
function checkOverrides({ overrides = [], options }: ComparisonRecord): Problem[] {
  const about = overrides.map(overriddenThing)
  return overrides.flatMap((override, index) => {
    const path = ['overrides', index]
    const problems: Problem[] = []
    if (about.indexOf(about[index] as string) < index) {
      problems.push(found(path, { code: 'overriddenTwice', parts: { id: override.id } }))
    }
    if ('option' in override && !options.some(({ option }) => option.id === override.option)) {
      problems.push(
        found([...path, 'option'], { code: 'notCompared', parts: { thing: 'option', id: override.option } }),
      )
    }
    if ('robot' in override && !options.some(({ design }) => design.id === override.robot)) {
      problems.push(found([...path, 'robot'], { code: 'notCompared', parts: { thing: 'design', id: override.robot } }))
    }
    return problems
  })
}

async function checkDecision(record: DecisionRecord, workspace: WorkspaceStore): Promise<Problem[]> {
  const problems = await checkReference(record.comparison, 'comparison', { path: ['comparison'], workspace })
  if (record.snapshot.options.some(({ id }) => id === record.chosen)) return problems
  return [...problems, found(['chosen'], { code: 'chosenElsewhere', parts: { option: record.chosen } })]
}

async function checkSheet(sheet: QuickSheetRecord, workspace: WorkspaceStore): Promise<Problem[]> {
  const game = await read(workspace, 'game', sheet.game)
  if (game) return checkQuickSheet(game.body, sheet)
  return [{ path: ['game'], ...missing('game', sheet.game) }]
}

const checkReading = ({ game }: ReadingRecord, workspace: WorkspaceStore): Promise<Problem[]> =>
  checkReference(game, 'game', { path: ['game'], workspace })

async function checkTimes(timing: TimingRecord, workspace: WorkspaceStore): Promise<Problem[]> {
  if (!(await read(workspace, 'design', { id: timing.design })))
    return [{ path: ['design'], ...missing('design', { id: timing.design }) }]
  return checkTiming(timing)
}

async function checkEvent({ id, game, earlier }: EventRecord, workspace: WorkspaceStore): Promise<Problem[]> {
  if (!(await read(workspace, 'game', { id: game }))) return [{ path: ['game'], ...missing('game', { id: game }) }]
  if (!earlier) return []
  const path = ['earlier', 'event']
  if (earlier.event === id) return [found(path, { code: 'earlierItself', parts: {} })]
  // One that is not here, as after a file was brought in, counts for nothing: the event can be saved all the same.
  const before = await read(workspace, 'event', { id: earlier.event })
  if (!before || before.body.game === game) return []
  return [found(path, { code: 'earlierOtherGame', parts: { event: before.body.name } })]
}

type Check<Body> = (body: Body, workspace: WorkspaceStore) => Promise<Problem[]>

/** What each kind of document can still get wrong when its shape is right: its own rules, and what it refers to. */
export const checks: { readonly [Kind in DocumentKind]: Check<Bodies[Kind]> } = {
  game: async (game) => checkGame(game),
  design: checkDesign,
  option: checkOptionRecord,
  comparison: checkComparison,
  decision: checkDecision,
  quickSheet: checkSheet,
  reading: checkReading,
  timing: checkTimes,
  part: async () => [],
  event: checkEvent,
}
