import { Button } from '@mantine/core'
import { useMemo, useState } from 'react'
import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { points, signedPoints } from '../../words/format.ts'
import { optionName } from '../../words/verdict.ts'
import { useModel } from '../../worker/useModel.ts'

/** The kept inputs computed again, beside what is written on the record. */
export function Recompute(props: { decision: DecisionRecord }) {
  const { game, options, result } = props.decision.snapshot
  const [asked, setAsked] = useState(false)
  const anew = useModel(
    'compare',
    useMemo(() => (asked ? { request: { game, options } } : null), [asked, game, options]),
  )
  return (
    <section className="stack no-print" aria-labelledby="recompute-title">
      <h2 id="recompute-title">Compute it again</h2>
      <p>From the inputs that are kept with the record: what the model says today, beside what is written.</p>
      {!asked && (
        <div>
          <Button variant="default" onClick={() => setAsked(true)}>
            Compute again
          </Button>
        </div>
      )}
      {anew.error && <p role="alert">{anew.error.message}</p>}
      {asked && anew.isFetching && <p role="status">Computing …</p>}
      {anew.data && (
        <table className="tide">
          <caption className="visually-hidden">Then and now</caption>
          <thead>
            <tr>
              <th scope="col">Option</th>
              <th scope="col" className="figure">
                Written
              </th>
              <th scope="col" className="figure">
                Now
              </th>
              <th scope="col" className="figure">
                Moved
              </th>
            </tr>
          </thead>
          <tbody>
            {anew.data.options.map((option) => {
              const before = result.options.find(({ id }) => id === option.id)?.mean
              return (
                <tr key={option.id}>
                  <th scope="row">{optionName(options, option.id)}</th>
                  <td className="figure">{before === undefined ? '–' : points(before)}</td>
                  <td className="figure">{points(option.mean)}</td>
                  <td className="figure">{before === undefined ? '–' : signedPoints(option.mean - before)}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      )}
    </section>
  )
}
