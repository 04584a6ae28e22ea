import { type ReactNode, Suspense, useState } from 'react'
import { createPortal } from 'react-dom'
import { Link } from 'wouter'
import { useOwnSentence } from '../screens/overrides/OwnNumbersContext.tsx'
import { words } from '../words/catalogue.ts'
import type { Explanation } from '../words/explain.ts'
import { Panel } from './Panel.tsx'
import { unfold } from './parts/unfold.ts'
import { screen } from './screen.ts'

const ExplanationFile = screen(() => import('./ExplanationFile.tsx'))

/** A number that opens: how it came about, from which inputs and which revision. */
export function CameAbout(props: { children: ReactNode; explain: () => Explanation }) {
  const [open, setOpen] = useState(false)
  const texts = words().explain
  // On paper nothing opens: a number stays, what only says that it opens does not.
  const bare = props.children === texts.opened
  return (
    <>
      <button
        type="button"
        className={bare ? 'opens no-print' : 'opens'}
        onClick={() => setOpen(true)}
        title={texts.opened}
      >
        {props.children}
        <span className="visually-hidden"> – {texts.openedShort}</span>
      </button>
      {/* In the body, because a number stands in sentences and cells, which may hold no dialog. */}
      {open && createPortal(<Opened explanation={props.explain()} onClose={() => setOpen(false)} />, document.body)}
    </>
  )
}

const numbered = <T extends object>(all: readonly T[]) => all.map((one, number) => ({ ...one, number }))

/** On this page, behind the panel: closed first, because what it lies over can not be gone to. */
function toPart(id: string, close: () => void) {
  close()
  unfold(document.getElementById(id))
}

function Opened(props: { explanation: Explanation; onClose: () => void }) {
  const { title, result, formula, total, source, otherwise, links } = props.explanation
  // Two parts may be called alike: two stages of one leg, two robots.
  const [parts, inputs] = [numbered(props.explanation.parts), numbered(props.explanation.inputs)]
  const texts = words().explain
  const own = useOwnSentence()
  return (
    <Panel title={texts.opened} open onClose={props.onClose} side>
      <h3>{title}</h3>
      <p>
        <strong>{result}</strong>
      </p>
      <p>{formula}</p>
      {parts.length > 0 && (
        <table className="tide">
          <caption>{texts.parts}</caption>
          <tbody>
            {parts.map((part) => (
              <tr key={part.number}>
                <th scope="row">
                  {part.label}
                  {part.note && <div className="soft small">{part.note}</div>}
                </th>
                <td className="figure">{part.value}</td>
              </tr>
            ))}
            {total && (
              <tr className="total">
                <th scope="row">{total.label}</th>
                <td className="figure">{total.value}</td>
              </tr>
            )}
          </tbody>
        </table>
      )}
      <Suspense fallback={null}>{parts.length > 0 && <ExplanationFile explanation={props.explanation} />}</Suspense>
      {inputs.length > 0 && (
        <table className="tide">
          <caption>{texts.inputs}</caption>
          <tbody>
            {inputs.map((input) => (
              <tr key={input.number}>
                <th scope="row">{input.label}</th>
                <td className="figure" style={{ whiteSpace: 'normal' }}>
                  {input.value}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {otherwise && <p>{otherwise}</p>}
      {links && (
        <p className="row">
          {links.map(([href, said]) =>
            href.startsWith('#') ? (
              <a key={href} href={href} onClick={() => toPart(href.slice(1), props.onClose)}>
                {said}
              </a>
            ) : (
              <Link key={href} href={href} onClick={props.onClose}>
                {said}
              </Link>
            ),
          )}
        </p>
      )}
      <p className="soft small">
        {source}
        {own}
      </p>
    </Panel>
  )
}
