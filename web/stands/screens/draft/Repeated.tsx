import { tallyOf } from '../../record/observation.ts'
import type { Desk } from '../../record/useDraft.ts'
import { useWords } from '../../words/catalogue.ts'

/** '14 Piers, 2 missed; Davit: right?' */
export function Repeated({ desk: { draft, taps, game } }: { desk: Desk }) {
  const texts = useWords().check
  const { said, about } = draft
  const nameOf = (of: readonly { id: string; name: string }[], id: string) =>
    of.find((each) => each.id === id)?.name ?? id
  if (said.absent) return <p className="big told">{texts.absent}</p>
  const tally = tallyOf(taps)
  const missed = tally.reduce((sum, each) => sum + each.missed, 0)
  const scored = tally
    .filter(({ scored }) => scored > 0)
    .map(({ goal, scored, about: guessed }) =>
      (guessed ? texts.aboutScored : texts.scored)(scored, nameOf(game.goals, goal)),
    )
  const finish =
    about.subject === 'human' || said.attempted === undefined
      ? []
      : [
          said.achieved
            ? nameOf(game.finishes, said.achieved)
            : said.attempted
              ? texts.finishFailed(nameOf(game.finishes, said.attempted))
              : texts.noFinish,
        ]
  const told = [
    ...(scored.length > 0 ? scored : [texts.nothing]),
    ...(missed > 0 ? [texts.missed(missed)] : []),
    ...finish,
  ]
  return (
    <p className="big told">
      {told.join(', ')}. <strong>{texts.title}</strong>
    </p>
  )
}
