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
  overriddenThing,
  type QuickSheetRecord,
  type ReadingRecord,
  type Reference,
  type TimingRecord,
  within,
} from '../../model/documents/index.ts'
import type { Path, Problem } from '../../model/errors.ts'
import type { WorkspaceStore } from '../../store/types.ts'
import type { Bodies } from './kinds.ts'
import { missingSentence, read } from './read.ts'
import { partsOf, resolved } from './resolve.ts'

async function checkDesign(design: DesignRecord, workspace: WorkspaceStore): Promise<Problem[]> {
  const game = await read(workspace, 'game', { id: design.game })
  if (game) return within(['robot'], checkRobot(game.body, design.robot))
  return [{ path: ['game'], message: missingSentence('game', { id: design.game }) }]
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
  return [{ path: at.path, message: missingSentence(kind, { id, revision }) }]
}

async function checkComparison(record: ComparisonRecord, workspace: WorkspaceStore): Promise<Problem[]> {
  const references = await Promise.all([
    checkReference(record.game, 'game', { path: ['game'], workspace }),
    ...record.options.flatMap(({ option, design }, index) => [
      checkReference(option, 'option', { path: ['options', index, 'option'], workspace }),
      checkReference(design, 'design', { path: ['options', index, 'design'], workspace }),
    ]),
  ])
  const ids = record.inputs.map(({ id }) => id)
  const twice = ids.findIndex((id, index) => ids.indexOf(id) < index)
  const problems = references.flat()
  if (twice >= 0) {
    problems.push({ path: ['inputs', twice, 'id'], message: `There are two inputs with the id “${ids[twice]}”` })
  }
  problems.push(...checkOverrides(record))
  if (record.breakEven !== null && !ids.includes(record.breakEven)) {
    problems.push({ path: ['breakEven'], message: `There is no input with the id “${record.breakEven}”` })
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
      problems.push({ path, message: `The override “${override.id}” is about a number that is overridden already` })
    }
    if (override.kind === 'points' && !options.some(({ option }) => option.id === override.option)) {
      problems.push({
        path: [...path, 'option'],
        message: `The option “${override.option}” is not among those compared`,
      })
    }
    if (override.kind === 'leg' && !options.some(({ design }) => design.id === override.robot)) {
      problems.push({ path: [...path, 'robot'], message: `The design “${override.robot}” is not among those compared` })
    }
    return problems
  })
}

async function checkDecision(record: DecisionRecord, workspace: WorkspaceStore): Promise<Problem[]> {
  const problems = await checkReference(record.comparison, 'comparison', { path: ['comparison'], workspace })
  if (record.snapshot.options.some(({ id }) => id === record.chosen)) return problems
  const message = `The option “${record.chosen}” that was chosen is not among those of the snapshot`
  return [...problems, { path: ['chosen'], message }]
}

async function checkSheet(sheet: QuickSheetRecord, workspace: WorkspaceStore): Promise<Problem[]> {
  const game = await read(workspace, 'game', sheet.game)
  if (game) return checkQuickSheet(game.body, sheet)
  return [{ path: ['game'], message: missingSentence('game', sheet.game) }]
}

const checkReading = ({ game }: ReadingRecord, workspace: WorkspaceStore): Promise<Problem[]> =>
  checkReference(game, 'game', { path: ['game'], workspace })

async function checkTimes(timing: TimingRecord, workspace: WorkspaceStore): Promise<Problem[]> {
  if (!(await read(workspace, 'design', { id: timing.design })))
    return [{ path: ['design'], message: missingSentence('design', { id: timing.design }) }]
  return checkTiming(timing)
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
}
