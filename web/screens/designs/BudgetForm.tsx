import { TextInput } from '@mantine/core'
import { memo } from 'react'
import type { Game, Robot } from '../../../src/model/documents/types.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { useUnits } from '../../units/system.ts'
import { words } from '../../words/catalogue.ts'
import { day, plain } from '../../words/format.ts'
import { Present } from '../games/forms/Choices.tsx'
import { type Against, againstLimits } from './budget.ts'

const place = ['robot', 'budget']

/** Mass, cost, hours and the day it is ready, and how they stand against the game's limits. */
export const BudgetForm = memo(function BudgetForm(props: { game: Game; robot: Robot }) {
  const { game, robot } = props
  const edit = useEdit()
  const system = useUnits()
  const texts = words().budget
  const { budget } = robot
  return (
    <section className="sheet stack" aria-labelledby="budget-title">
      <h2 id="budget-title">{texts.title}</h2>
      <Present
        place={place}
        label={texts.present}
        fresh={{ mass: 0, cost: 0, hours: 0, readyBy: '' }}
        absent={undefined}
      />
      <p className="soft small">{texts.help}</p>
      {budget && (
        <>
          <div className="form-grid">
            <NumberField
              place={[...place, 'mass']}
              label={texts.mass}
              quantity="mass"
              min={0}
              max={10_000}
              step={0.5}
              help={texts.massHelp}
            />
            <NumberField
              place={[...place, 'cost']}
              label={texts.cost}
              min={0}
              max={1e9}
              step={10}
              help={texts.costHelp}
            />
            <NumberField
              place={[...place, 'hours']}
              label={texts.hours}
              unit={texts.hoursUnit}
              min={0}
              max={1e6}
              step={5}
            />
            <TextInput
              type="date"
              label={texts.readyBy}
              readOnly={edit.readOnly}
              value={budget.readyBy}
              data-place={[...place, 'readyBy'].join('/')}
              onChange={(event) => edit.set([...place, 'readyBy'], event.currentTarget.value, 'budget/readyBy')}
              onBlur={edit.pause}
            />
          </div>
          <p>
            {budget.readyBy === ''
              ? `${texts.work(plain(budget.hours, 1))}. ${texts.noDate}`
              : texts.ready(day(budget.readyBy), texts.work(plain(budget.hours, 1)))}
          </p>
          {game.limits ? (
            againstLimits(game, robot, system).map((one) => <Bar key={one.what} of={one} />)
          ) : (
            <p className="soft">{texts.noLimits}</p>
          )}
        </>
      )}
    </section>
  )
})

/** How much of the limit is used: a bar up to it, and hatched what goes beyond. */
function Bar({ of }: { of: Against }) {
  const texts = words().budget
  const most = Math.max(of.limit * 1.1, of.value * 1.05, 1e-9)
  const part = (value: number) => `${(value / most) * 100}%`
  return (
    <div className="stack budget" data-testid={`budget-${of.what}`}>
      <p className={of.over ? 'loss' : undefined}>{texts.bar(texts[of.what], of.words)}</p>
      <div className="budget-bar" aria-hidden="true">
        <div className="budget-used" style={{ width: part(Math.min(of.value, of.limit)) }} />
        {of.over && <div className="budget-over" style={{ width: part(of.value - of.limit) }} />}
        <div className="budget-limit" style={{ left: part(of.limit) }} />
      </div>
    </div>
  )
}
