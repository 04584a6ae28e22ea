import { Link } from 'wouter'
import { ShortcutList } from '../../shell/ShortcutList.tsx'
import { words } from '../../words/catalogue.ts'
import { Glossary } from './Glossary.tsx'
import './help.css'

export default function HelpScreen() {
  const texts = words().help
  return (
    <div className="stack wide">
      <h1>{texts.title}</h1>
      <section className="stack" aria-labelledby="begin">
        <h2 id="begin">{texts.begin}</h2>
        <div className="columns">
          {texts.paths.map((path) => (
            <div key={path.href} className="sheet stack">
              <h3>{path.title}</h3>
              <ol className="steps">
                {path.steps.map((step) => (
                  <li key={step}>{step}</li>
                ))}
              </ol>
              <p>
                <Link href={path.href}>{path.link}</Link>
              </p>
            </div>
          ))}
        </div>
      </section>
      <section className="stack" aria-labelledby="numbers">
        <h2 id="numbers">{texts.numbers}</h2>
        {texts.numbersText.map((text) => (
          <p key={text}>{text}</p>
        ))}
      </section>
      <Glossary />
      <section className="stack" aria-labelledby="shortcuts">
        <h2 id="shortcuts">{texts.shortcuts}</h2>
        <p>{texts.shortcutsHow}</p>
        <div className="columns">
          <ShortcutList />
        </div>
      </section>
    </div>
  )
}
