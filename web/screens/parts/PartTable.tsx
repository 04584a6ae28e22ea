import { Button } from '@mantine/core'
import { Link } from 'wouter'
import type { Part } from '../../../src/model/timing/parts.ts'
import { TableDownload } from '../../shell/TableDownload.tsx'
import { airFlow, pressure } from '../../units/measures.ts'
import { type Measured, unitOf } from '../../units/quantities.ts'
import { useUnits } from '../../units/system.ts'
import { writeQuantity } from '../../units/write.ts'
import { words } from '../../words/catalogue.ts'
import { day, plain } from '../../words/format.ts'
import type { Listed } from '../documents/useListActions.ts'
import { partsTable } from './csv/partsTable.ts'
import { numbersOf, type PartKind, type PartNumber } from './numbers.ts'

type Numbers = { readonly [key: string]: number | undefined }

/** The parts of one kind with the numbers that matter, where these come from, and what can be done with each. */
export function PartTable(props: {
  kind: PartKind
  parts: readonly Part[]
  onCopy(part: Listed): void
  onRemove(part: Listed): void
}) {
  const { kind, parts } = props
  const texts = words().parts
  const list = words().documents.list
  const system = useUnits()
  const title = texts.many[kind]
  const symbol = (quantity: Measured | undefined) => (quantity ? unitOf(quantity, system).symbol : null)
  const flowUnit = `${symbol(airFlow)} @ ${symbol(pressure)}`
  const shown = ({ key, quantity }: PartNumber, part: Part): string => {
    const value = (part as unknown as Numbers)[key]
    if (value === undefined) return '–'
    return quantity ? writeQuantity(value, quantity, system) : plain(value, 3)
  }
  return (
    <section className="sheet stack">
      <h2>{title}</h2>
      {parts.length === 0 ? (
        <p className="soft">{texts.list.none}</p>
      ) : (
        <>
          <div className="scroll" tabIndex={0} role="region" aria-label={title}>
            <table className="tide parts">
              <caption className="visually-hidden">{title}</caption>
              <thead>
                <tr>
                  <th scope="col">{texts.name}</th>
                  {numbersOf[kind].map(({ key, quantity }) => (
                    <th scope="col" key={key} className="figure-head">
                      {texts.labels[key as keyof typeof texts.labels]}
                      <Unit symbol={symbol(quantity)} />
                    </th>
                  ))}
                  {kind === 'compressor' && (
                    <th scope="col">
                      {texts.labels.flow}
                      <Unit symbol={flowUnit} />
                    </th>
                  )}
                  <th scope="col">{texts.sourceAndDate}</th>
                  <th scope="col">{texts.list.actions}</th>
                </tr>
              </thead>
              <tbody>
                {parts.map((part) => (
                  <tr key={part.id}>
                    <th scope="row">
                      <Link href={`/parts/${part.id}`}>{part.name}</Link>
                    </th>
                    {numbersOf[kind].map((number) => (
                      <td key={number.key} className="figure">
                        <span className="cell-label">{labelWords(number.key, symbol(number.quantity))}</span>
                        {shown(number, part)}
                      </td>
                    ))}
                    {part.kind === 'compressor' && (
                      <td>
                        <span className="cell-label">{labelWords('flow', flowUnit)}</span>
                        {part.flow.map(([at, amount]) => (
                          <div key={at} className="numeral">
                            {writeQuantity(amount, airFlow, system)} @ {writeQuantity(at, pressure, system)}
                          </div>
                        ))}
                      </td>
                    )}
                    <td className="parts-source">
                      {part.source || '–'}
                      <div className="soft small">{day(part.date)}</div>
                    </td>
                    <td>
                      <span className="row parts-actions">
                        <Button
                          size="compact-md"
                          variant="default"
                          onClick={() => props.onCopy(part)}
                          aria-label={list.copyOf(part.name)}
                        >
                          {list.copy}
                        </Button>
                        <Button
                          size="compact-md"
                          variant="subtle"
                          onClick={() => props.onRemove(part)}
                          aria-label={list.removeOf(part.name)}
                        >
                          {list.remove}
                        </Button>
                      </span>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <TableDownload title={title} table={() => partsTable(kind, parts)} />
        </>
      )}
    </section>
  )
}

/** On a narrow screen, where a part is a card, each number has its label beside it. */
function labelWords(key: string, symbol: string | null): string {
  const { labels } = words().parts
  const label = labels[key as keyof typeof labels]
  return symbol ? `${label}, ${symbol}` : label
}

function Unit(props: { symbol: string | null }) {
  return props.symbol && <div className="small">{props.symbol}</div>
}
