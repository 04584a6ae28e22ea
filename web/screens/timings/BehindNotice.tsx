import { Button } from '@mantine/core'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { sayQuantity } from '../../units/write.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import { type Behind, takenOver } from './edits.ts'
import { useTimings } from './TimingContext.ts'

const secondsOf = (value: number): string => `${plain(value, 3)}\u00a0s`

/** Followers that no longer have what their mechanism gives: told, and mended at once. */
export default function BehindNotice(props: { found: readonly Behind[] }) {
  const { robot } = useTimings()
  const edit = useEdit()
  const texts = words().timings.behind
  return (
    <section className="sheet stack" role="alert">
      <h2>{texts.title}</h2>
      <p>{texts.text}</p>
      <ul>
        {props.found.map(({ at, name, mechanism, has, gives }) => (
          <li key={at.join('/')}>
            {name === null
              ? texts.drive({
                  mechanism: mechanism.name,
                  has: sayQuantity(has, 'speed', undefined, 2),
                  gives: sayQuantity(gives, 'speed', undefined, 2),
                })
              : texts.stage({ stage: name, mechanism: mechanism.name, has: secondsOf(has), gives: secondsOf(gives) })}
          </li>
        ))}
      </ul>
      {!edit.readOnly && (
        <div>
          <Button onClick={() => edit.set(['robot'], takenOver(robot))}>{texts.take}</Button>
        </div>
      )}
    </section>
  )
}
