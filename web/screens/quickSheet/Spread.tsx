import { type Guess, pool } from '../../../src/model/sheet/index.ts'
import { secondsCell } from '../../charts/cells.ts'
import { Figure } from '../../charts/Figure.tsx'
import { GuessSpread } from '../../charts/GuessSpread.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'

/** What was guessed, as a picture and as a table. */
export function Spread(props: { guesses: readonly Guess[] }) {
  const { guesses } = props
  const texts = words().quickSheet.rounds
  return (
    <Figure
      title={texts.spread}
      table={{
        head: texts.spreadTable,
        rows: guesses.map(({ low, likely, high }, index) => [
          String(index + 1),
          ...[low, likely, high].map((value) => secondsCell(value, plain(value, 1))),
        ]),
      }}
    >
      <Measured drawn="guesses" data={guesses} most={640}>
        {(width) => <GuessSpread guesses={guesses} pooled={pool(guesses).range} width={width} />}
      </Measured>
    </Figure>
  )
}
