import { strengthNames } from '../../../src/model/sheet/index.ts'
import { words } from '../../words/catalogue.ts'
import { NumberCell } from './cells.tsx'

/** What weak, middling and strong play mean: factors that can be seen and changed. */
export function Strengths() {
  const texts = words().quickSheet.strength
  return (
    <section className="sheet stack" aria-labelledby="strength-title">
      <h2 id="strength-title">{texts.title}</h2>
      <p>{texts.how}</p>
      <table className="tide strengths">
        <caption className="visually-hidden">{texts.title}</caption>
        <thead>
          <tr>
            <td />
            <th scope="col">{texts.times}</th>
            <th scope="col">{texts.success}</th>
          </tr>
        </thead>
        <tbody>
          {strengthNames.map((name) => (
            <tr key={name}>
              <th scope="row">{texts.names[name]}</th>
              <td>
                <NumberCell
                  place={['strengths', name, 'times']}
                  label={texts.times}
                  way={texts.names[name]}
                  rules={{ above: 0, max: 10 }}
                />
              </td>
              <td>
                <NumberCell
                  place={['strengths', name, 'success']}
                  label={texts.success}
                  way={texts.names[name]}
                  rules={{ min: 0, max: 10 }}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
