import type { StoredAir } from '../../../../src/model/documents/air.ts'
import type { Compressor } from '../../../../src/model/timing/parts.ts'
import { NumberField } from '../../../shell/fields/NumberField.tsx'
import { airFlow, pressure, volume } from '../../../units/measures.ts'
import { sayQuantity } from '../../../units/write.ts'
import { words } from '../../../words/catalogue.ts'
import { listed } from '../../../words/format.ts'
import { Present } from '../../games/forms/Choices.tsx'
import { firstPart } from '../../parts/firstPart.ts'
import { gaugeWords } from '../../parts/gauge.ts'
import { PartField } from '../../timings/PartField.tsx'
import { ofKind, useShelf } from '../../timings/useShelf.ts'
import { sayPressure } from './airProblems.ts'

const place = ['robot', 'air']
/** Limits of the contract (Pa, absolute), and what an arrow key adds in the unit shown. */
const pressures = { quantity: pressure, min: 50_000, max: 2_000_000, step: 10 }

/** Tanks, pressures and the compressor of stored air. */
export function AirForm(props: { air: StoredAir }) {
  const { air } = props
  const texts = words().air.form
  const { parts } = useShelf()
  const gauged = (key: 'stored' | 'working' | 'low', help = '') => ({
    place: [...place, key],
    help: `${help} ${gaugeWords(air[key])}`.trim(),
    ...pressures,
  })
  const fresh = {
    part: ofKind(parts, 'compressor')[0] ?? placeholder(),
    on: Math.max(air.stored - 100_000, air.working),
    off: air.stored,
  }
  return (
    <div className="stack">
      <p className="soft small">{texts.absolute}</p>
      <div className="form-grid">
        <PartField place={[...place, 'tank']} label={words().air.part.tank} kind="tank" numbers={false} />
        <NumberField
          place={[...place, 'tanks']}
          label={texts.tanks}
          help={texts.tanksHelp}
          min={1}
          max={50}
          step={1}
          whole
        />
        <NumberField
          place={[...place, 'tank', 'volume']}
          label={texts.volume}
          quantity={volume}
          min={1e-6}
          max={1}
          step={0.1}
        />
        <NumberField
          place={[...place, 'tank', 'highestPressure']}
          label={texts.highest}
          help={gaugeWords(air.tank.highestPressure)}
          {...pressures}
        />
        <NumberField label={texts.stored} {...gauged('stored')} />
        <NumberField label={texts.working} {...gauged('working', texts.workingHelp)} />
        <NumberField label={texts.low} {...gauged('low', texts.lowHelp)} />
        <NumberField
          place={[...place, 'slower']}
          label={texts.slower}
          help={texts.slowerHelp}
          min={1}
          max={20}
          step={0.5}
          unit="×"
        />
        <NumberField place={[...place, 'ambient']} label={texts.ambient} {...pressures} max={110_000} step={1} />
        <NumberField
          place={[...place, 'leak']}
          label={texts.leak}
          help={texts.leakHelp}
          quantity={airFlow}
          min={0}
          max={0.01}
          step={0.1}
        />
      </div>
      <Present place={[...place, 'compressor']} label={texts.compressor} fresh={fresh} />
      {air.compressor && (
        <>
          <div className="form-grid">
            <PartField
              place={[...place, 'compressor', 'part']}
              label={words().air.part.compressor}
              kind="compressor"
              numbers={false}
            />
            <NumberField
              place={[...place, 'compressor', 'on']}
              label={texts.on}
              help={gaugeWords(air.compressor.on)}
              {...pressures}
            />
            <NumberField
              place={[...place, 'compressor', 'off']}
              label={texts.off}
              help={gaugeWords(air.compressor.off)}
              {...pressures}
            />
          </div>
          <p className="soft small">{flowWords(air.compressor.part)}</p>
        </>
      )}
    </div>
  )
}

const placeholder = () => {
  const texts = words().parts.kinds
  return firstPart('compressor', {
    id: 'compressor',
    name: texts.compressor,
    date: new Date().toISOString().slice(0, 10),
  })
}

function flowWords({ flow }: Compressor): string {
  const texts = words().air.form
  const say = ([at, amount]: [number, number]) =>
    texts.flowAt(sayQuantity(amount, airFlow, undefined, 1), sayPressure(at))
  return texts.flow(listed(flow.map(say)))
}
