import { Button, TextInput } from '@mantine/core'
import { readNumber } from '../../../shell/fields/parse.ts'
import { words } from '../../../words/catalogue.ts'
import type { Ways } from '../MatchDesk.tsx'
import { Alliance } from '../SetupForm.tsx'
import { mostSettings, type Setting } from './lineupSetup.ts'

/** A weight that can be used; null where something else was typed. */
export function weightOf({ weight }: Setting): number | null {
  const read = readNumber(weight, limits)
  return 'value' in read ? read.value : null
}

const limits = { min: 0, max: 1000 }

/** The rivals as the set-up has them, and further settings in which they may come. */
export function Rivals(props: {
  settings: readonly Setting[]
  ways: Ways
  /** `field`: what is being typed in. */
  onChange(next: readonly Setting[], field?: string): void
}) {
  const { settings, ways, onChange } = props
  const text = words().lineup
  const put = (index: number, next: Partial<Setting>, field?: string) =>
    onChange(
      settings.map((setting, at) => (at === index ? { ...setting, ...next } : setting)),
      field,
    )
  return (
    <fieldset className="stack">
      <legend>{text.rivals}</legend>
      <p className="soft small">{text.rivalsHelp}</p>
      {settings.length > 1 && (
        <div className="columns">
          {settings.map((setting, index) => {
            const read = readNumber(setting.weight, limits)
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: two settings may be alike in all but their place
              <div key={index} className="stack">
                {index === 0 ? (
                  <p>
                    <strong>{text.setting(1)}</strong>: {text.ofSetup}
                  </p>
                ) : (
                  <Alliance
                    side="theirs"
                    legend={text.setting(index + 1)}
                    slots={setting.slots}
                    ways={ways}
                    onChange={(slots) => put(index, { slots })}
                  />
                )}
                <div className="row" style={{ alignItems: 'end' }}>
                  <TextInput
                    label={text.weight(index + 1)}
                    inputMode="decimal"
                    autoComplete="off"
                    w={170}
                    value={setting.weight}
                    error={'error' in read ? read.error : null}
                    onChange={(event) => put(index, { weight: event.currentTarget.value }, `weight ${index}`)}
                  />
                  {index > 0 && (
                    <Button variant="default" onClick={() => onChange(settings.filter((_, at) => at !== index))}>
                      {text.removeSetting(index + 1)}
                    </Button>
                  )}
                </div>
              </div>
            )
          })}
        </div>
      )}
      <div>
        <Button
          variant="default"
          disabled={settings.length >= mostSettings}
          onClick={() => onChange([...settings, { slots: settings.at(-1)!.slots, weight: '1' }])}
        >
          {text.addSetting}
        </Button>
      </div>
    </fieldset>
  )
}
