import { Button } from '@mantine/core'
import { forgetTexts, useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { words } from '../../words/catalogue.ts'
import { atmosphereWords } from './gauge.ts'
import { flowPoint } from './numbers.ts'
import './parts.css'

const place = ['part', 'flow'] as const

/** A compressor's flow against pressure, point by point. */
export function FlowFields(props: { flow: readonly [number, number][] }) {
  const { flow } = props
  const edit = useEdit()
  const texts = words().parts.form
  const put = (points: readonly [number, number][]) => {
    forgetTexts(edit, place)
    edit.set(place, points)
  }
  const add = () => {
    const [at, amount] = flow.at(-1) ?? [100_000, 0.0005]
    put([...flow, [Math.min(at + 100_000, flowPoint.pressure.max), amount]])
  }
  return (
    <fieldset className="stack">
      <legend>{texts.flow}</legend>
      <p className="soft small">{texts.flowHelp(atmosphereWords())}</p>
      {flow.map((_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a point is nothing but its place in the list
        <div className="form-grid parts-point" key={index}>
          <NumberField
            place={[...place, index, 0]}
            label={texts.pressureAt(index + 1)}
            step={10}
            {...flowPoint.pressure}
          />
          <NumberField place={[...place, index, 1]} label={texts.flowAt(index + 1)} step={1} {...flowPoint.flow} />
          {!edit.readOnly && flow.length > flowPoint.least && (
            <Button
              variant="subtle"
              aria-label={texts.removePoint(index + 1)}
              onClick={() => put(flow.filter((__, other) => other !== index))}
            >
              {texts.remove}
            </Button>
          )}
        </div>
      ))}
      {!edit.readOnly && flow.length < flowPoint.most && (
        <div>
          <Button variant="default" onClick={add}>
            {texts.add}
          </Button>
        </div>
      )}
    </fieldset>
  )
}
