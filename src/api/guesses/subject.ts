import type { QuickLegName, QuickSheetRecord, QuickWay } from '../../model/documents/index.ts'
import type { RoundSubject, WorkspaceStore } from '../../store/types.ts'
import { notFound, read, type Stored } from '../documents/read.ts'
import { refuse } from '../errors.ts'
import { found as said } from '../sentences.ts'

interface Asked {
  sheet: string
  way: string
  leg: QuickLegName
}

function wayOf(sheet: QuickSheetRecord, { way, leg }: Asked): QuickWay {
  const found = sheet.ways.find(({ id }) => id === way)
  if (!found) refuse([said(['way'], { code: 'noWayOnSheet', parts: { sheet: sheet.name, way } })])
  if (leg === 'finish' && found!.finish === null)
    refuse([said(['leg'], { code: 'noFinishToGuess', parts: { way: found!.name } })])
  return found!
}

/** The stored sheet, or a refusal. */
export async function sheetOf(workspace: WorkspaceStore, id: string): Promise<Stored<'quickSheet'>> {
  const sheet = await read(workspace, 'quickSheet', { id })
  if (!sheet) throw notFound('quickSheet', { id })
  return sheet
}

/** What a round is about, in the words of the stored sheet and of its game. */
export async function subjectOf(workspace: WorkspaceStore, asked: Asked): Promise<RoundSubject> {
  const sheet = await sheetOf(workspace, asked.sheet)
  const way = wayOf(sheet.body, asked)
  const game = await read(workspace, 'game', sheet.body.game)
  const places = game ? [...game.body.sources, ...game.body.goals, ...game.body.finishes] : []
  const ids = { collect: way.sources, score: way.goals, finish: way.finish === null ? [] : [way.finish] }[asked.leg]
  const names = ids.map((id) => places.find((place) => place.id === id)?.name ?? id)
  return { ...asked, about: { way: way.name, places: names, load: way.load } }
}
