import type { System } from '../units/quantities.ts'
import { chooseUnits, useUnits } from '../units/system.ts'
import { words } from '../words/catalogue.ts'

/** Metric or inch–pound, for every number on every screen. */
export function UnitSwitch() {
  const texts = words().units
  return (
    <label className="unit-switch">
      <span>{texts.label}</span>
      <select value={useUnits()} onChange={(event) => chooseUnits(event.currentTarget.value as System)}>
        {Object.entries(texts.systems).map(([system, name]) => (
          <option key={system} value={system}>
            {name}
          </option>
        ))}
      </select>
    </label>
  )
}
