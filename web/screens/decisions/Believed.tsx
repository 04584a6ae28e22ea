import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { TableDownload } from '../../shell/TableDownload.tsx'
import { beliefsTable } from '../../tables/answers.ts'
import { words } from '../../words/catalogue.ts'
import { inputWords } from '../../words/inputs.ts'
import { Block } from './Block.tsx'

/** The unknowns, and what was believed about them. */
export function Believed(props: { decision: DecisionRecord }) {
  const { game, options, inputs } = props.decision.snapshot
  const texts = words().decisions
  if (inputs.length === 0) return null
  return (
    <Block title={texts.believed}>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.believed}>
        <table className="tide">
          <caption className="visually-hidden">{texts.believedCaption}</caption>
          <thead>
            <tr>
              <th scope="col">{texts.unknown}</th>
              {[texts.low, texts.likely, texts.high].map((head) => (
                <th key={head} scope="col" className="figure">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {inputs.map((input) => {
              const { name, say } = inputWords(input, { game, options })
              return (
                <tr key={input.id}>
                  <th scope="row">{name}</th>
                  <td className="figure">{say(input.low)}</td>
                  <td className="figure">{say(input.likely)}</td>
                  <td className="figure">{say(input.high)}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
      <TableDownload title={texts.believed} table={() => beliefsTable(inputs, { game, options }, texts.believed)} />
    </Block>
  )
}
