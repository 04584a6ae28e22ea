import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { OwnText } from '../../shell/fields/OwnText.tsx'
import { TableDownload } from '../../shell/TableDownload.tsx'
import { shownTable } from '../../tables/shown.ts'
import { words } from '../../words/catalogue.ts'
import { Block } from './Block.tsx'

/** What will be looked at, what is expected, and when; on paper with room for what is seen. */
export function EventChecks(props: { decision: DecisionRecord }) {
  const { checkAtEvent, checks = [] } = props.decision
  const texts = words().decisions
  if (checkAtEvent === '' && checks.length === 0) return null
  return (
    <Block title={texts.checks}>
      {checkAtEvent !== '' && (
        <p>
          <OwnText text={checkAtEvent} />
        </p>
      )}
      {checks.length > 0 && (
        <>
          <div className="scroll" tabIndex={0} role="region" aria-label={texts.checks}>
            <table className="tide checks">
              <caption className="visually-hidden">{texts.checks}</caption>
              <thead>
                <tr>
                  {[texts.quantity, texts.expected, texts.when].map((head) => (
                    <th key={head} scope="col">
                      {head}
                    </th>
                  ))}
                  <th scope="col" className="only-paper">
                    {texts.seen}
                  </th>
                </tr>
              </thead>
              <tbody>
                {checks.map(({ quantity, expected, when }) => (
                  <tr key={`${quantity} ${when}`}>
                    <th scope="row">
                      <OwnText text={quantity} />
                    </th>
                    <td>
                      <OwnText text={expected} />
                    </td>
                    <td>
                      <OwnText text={when} />
                    </td>
                    <td className="only-paper" />
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <TableDownload
            title={texts.checks}
            table={() =>
              shownTable(
                texts.checks,
                [texts.quantity, texts.expected, texts.when],
                checks.map(({ quantity, expected, when }) => [quantity, expected, when]),
              )
            }
          />
        </>
      )}
    </Block>
  )
}
