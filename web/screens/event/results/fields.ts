import type { Game } from '../../../../src/model/documents/types.ts'
import type { ResultSide } from '../../../../src/model/scouting/types.ts'
import { words } from '../../../words/catalogue.ts'
import { plain } from '../../../words/format.ts'

/** One side of a result as it is typed: texts by name of the field, and the bonuses that are ticked. */
export interface Fields {
  texts: { [key: string]: string }
  bonuses: string[]
}

const categories = ['total', 'autonomous', 'goals', 'finishes', 'fromFouls'] as const

export function fieldsOf({ goals }: Pick<Game, 'goals'>, side: ResultSide | undefined): Fields {
  const texts: Fields['texts'] = {}
  for (const key of categories) if (side?.points[key] !== undefined) texts[key] = plain(side.points[key])
  for (const { id } of goals) if (side?.pieces?.[id] !== undefined) texts[`pieces.${id}`] = plain(side.pieces[id])
  return { texts, bonuses: side?.bonuses ?? [] }
}

const numberOf = (text: string): number | null => {
  const plainText = text.trim().replace('\u2212', '-').replace(',', '.')
  return /^-?\d{1,4}(\.\d+)?$/.test(plainText) ? Number(plainText) : null
}

/** What was typed as a side, or what is wrong in which field. Empty categories are not told. */
export function readSide(
  { goals }: Pick<Game, 'goals'>,
  { texts, bonuses }: Fields,
): { side: ResultSide } | { problems: { [key: string]: string } } {
  const said = words().event.results
  const problems: { [key: string]: string } = {}
  const points: { [key: string]: number } = {}
  const pieces: { [goal: string]: number } = {}
  for (const key of categories) {
    const text = texts[key] ?? ''
    if (text.trim() === '') {
      if (key === 'total') problems[key] = said.noTotal
      continue
    }
    const value = numberOf(text)
    if (value === null) problems[key] = said.noNumber(text)
    else points[key] = value
  }
  for (const { id } of goals) {
    const text = texts[`pieces.${id}`] ?? ''
    if (text.trim() === '') continue
    const value = numberOf(text)
    if (value === null || value < 0 || !Number.isInteger(value)) problems[`pieces.${id}`] = said.noCount(text)
    else pieces[id] = value
  }
  if (Object.keys(problems).length > 0) return { problems }
  return {
    side: {
      points: points as ResultSide['points'],
      bonuses,
      ...(Object.keys(pieces).length === 0 ? {} : { pieces }),
    },
  }
}
