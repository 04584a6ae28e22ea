import { useEstimates } from '../../../data/estimates.ts'
import { words } from '../../../words/catalogue.ts'
import { plain } from '../../../words/format.ts'

/** How soon own matches are forgotten in the numbers of an event that are shown, in a sentence beside them. */
export function useHalfLifeSaid(event: string): string {
  const { data } = useEstimates(event)
  const texts = words().made
  if (!data) return ''
  return data.halfLife === null ? texts.noHalfLife : texts.halfLife(plain(data.halfLife, 1))
}
