import type { FieldReport } from '../../../../src/model/scouting/field/types.ts'
import { cellData, cellShown } from '../../../charts/cell.ts'
import { secondsCell, signedCell } from '../../../charts/cells.ts'
import { Measured } from '../../../charts/Measured.tsx'
import { PairedBars } from '../../../charts/PairedBars.tsx'
import { words } from '../../../words/catalogue.ts'
import { legWords } from '../../designs/air/legWords.ts'
import type { About } from './Answer.tsx'
import { signedSeconds, within } from './said.ts'

/** Leg by leg: both times beside each other, and what of the difference each brings. */
export function Legs({ page, design, report, whole }: About & { whole: NonNullable<FieldReport['whole']> }) {
  const texts = words().fieldCheck
  const rows = report.legs.map((leg) => ({ ...leg, name: legWords(page.game, design.body.robot, leg.leg) }))
  return (
    <div className="sheet stack">
      <h3>{texts.legs}</h3>
      <Measured drawn="legs" data={report}>
        {(width) => (
          <PairedBars
            width={width}
            rows={[
              { name: texts.wholeTrip, model: whole.model.mean, field: whole.field },
              ...rows.map(({ name, model, field }) => ({ name, model: model.mean, field })),
            ]}
          />
        )}
      </Measured>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.legs}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{texts.leg}</th>
              {[texts.trips, texts.byModel, texts.onField, texts.difference, texts.brings].map((name) => (
                <th key={name} scope="col" className="figure">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {[{ ...whole, name: texts.wholeTrip, share: null }, ...rows].map(
              ({ name, trips, model, field, difference, share }) => (
                <tr key={name}>
                  <th scope="row">{name}</th>
                  <td className="figure">{trips}</td>
                  {[
                    secondsCell(model.mean),
                    secondsCell(field.mean, within(field)),
                    signedCell(difference.mean, signedSeconds(difference.mean)),
                  ].map((cell, index) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: columns that never move
                    <td key={index} className="figure" {...cellData(cell)}>
                      {cellShown(cell)}
                    </td>
                  ))}
                  <td className="figure">{share === null ? '–' : signedSeconds(share)}</td>
                </tr>
              ),
            )}
          </tbody>
        </table>
      </div>
      <p className="soft">{texts.legsHow}</p>
    </div>
  )
}
