import { words } from '../words/catalogue.ts'
import { keyName } from './keyNames.ts'
import { type ShortcutId, shortcutIds, shortcuts } from './shortcuts.ts'

const places = ['anywhere', 'editors', 'numbers', 'strip', 'field'] as const

/** One combination, key by key. */
function Keys(props: { keys: string }) {
  return (
    <span className="keys">
      {props.keys.split('+').map((key) => (
        <kbd key={key}>{keyName(key)}</kbd>
      ))}
    </span>
  )
}

/** All shortcuts, by where they work. */
export function ShortcutList() {
  const texts = words().shortcuts
  return (
    <>
      {places.map((where) => (
        <table key={where} className="tide">
          <caption>{texts.where[where]}</caption>
          <thead className="visually-hidden">
            <tr>
              <th scope="col">{texts.does}</th>
              <th scope="col">{texts.keys}</th>
            </tr>
          </thead>
          <tbody>
            {shortcutIds
              .filter((id) => shortcuts[id].where === where)
              .map((id) => (
                <Row key={id} id={id} />
              ))}
          </tbody>
        </table>
      ))}
    </>
  )
}

function Row(props: { id: ShortcutId }) {
  const texts = words().shortcuts
  return (
    <tr>
      <th scope="row">{texts.actions[props.id]}</th>
      <td>
        {shortcuts[props.id].keys.map((keys, index) => (
          <span key={keys}>
            {index > 0 && ` ${texts.or} `}
            <Keys keys={keys} />
          </span>
        ))}
      </td>
    </tr>
  )
}
