import type { ReactNode } from 'react'
import type { FieldDriver, FieldReport } from '../../../../src/model/scouting/field/types.ts'
import { seriesLetter } from '../../../charts/DotPlot.tsx'
import { Measured } from '../../../charts/Measured.tsx'
import { PracticeCurve } from '../../../charts/PracticeCurve.tsx'
import { words } from '../../../words/catalogue.ts'
import { seconds } from '../../../words/format.ts'
import { asChange, signedSeconds, within } from './said.ts'

/** By driver: times, and what practice did to them. */
export function DriverTable({ report, children }: { report: FieldReport; children?: ReactNode }) {
  const texts = words().fieldCheck
  const nameOf = ({ driver }: FieldDriver) => driver ?? texts.noDriver
  const rows = report.drivers.map((driver) => ({
    name: nameOf(driver),
    learning: driver.learning,
    runs: report.runs.flatMap((run) =>
      run.driver === driver.driver && run.field !== null && run.model !== null
        ? [{ number: run.number, ratio: run.field / run.model }]
        : [],
    ),
  }))
  return (
    <div className="sheet stack">
      <h3>{texts.drivers}</h3>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.drivers}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{texts.driver}</th>
              {[texts.runCount, texts.trips, texts.byModel, texts.onField, texts.difference, texts.doubling].map(
                (name) => (
                  <th key={name} scope="col" className="figure">
                    {name}
                  </th>
                ),
              )}
            </tr>
          </thead>
          <tbody>
            {report.drivers.map((driver, index) => (
              <tr key={nameOf(driver)}>
                <th scope="row">
                  {seriesLetter(index)} {nameOf(driver)}
                </th>
                <td className="figure">{rows[index]!.runs.length}</td>
                <td className="figure">{driver.compared?.trips ?? 0}</td>
                <td className="figure">{driver.compared ? seconds(driver.compared.model.mean) : '–'}</td>
                <td className="figure">{driver.compared ? within(driver.compared.field) : '–'}</td>
                <td className="figure">{driver.compared ? signedSeconds(driver.compared.difference.mean) : '–'}</td>
                <td className="figure">{learned(driver)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {rows.some(({ runs }) => runs.length > 1) && (
        <figure className="chart">
          <figcaption>{texts.practice.title}</figcaption>
          <Measured drawn="practice" data={report}>
            {(width) => <PracticeCurve width={width} rows={rows} />}
          </Measured>
        </figure>
      )}
      <p className="soft">{texts.practiceHow}</p>
      {children}
    </div>
  )
}

function learned({ learning }: FieldDriver): string {
  const texts = words().fieldCheck
  if (!learning) return texts.fewRuns
  const [low, high] = learning.interval95
  return texts.changeWithin(asChange(learning.doubling), asChange(low), asChange(high))
}
