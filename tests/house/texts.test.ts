import { describe, expect, test } from 'vitest'
import { sources } from './sources.ts'
import { strayTexts } from './texts.ts'

const catalogue = /^web\/(stands\/)?words\/(en|de)(\/|\.ts)/

/** A name in every language, what only a developer can bring about, and what the browser reads. */
const allowed = [
  'Cyclewright',
  'a field stands outside of its form',
  'a timing stands outside of its design',
  'input, textarea, select, [contenteditable]',
  '(prefers-color-scheme: dark)',
  '(prefers-contrast: more)',
  '(prefers-reduced-motion: reduce)',
  'at once',
  'input, select',
  '.visually-hidden, .cell-label, s, .own-mark',
  'br, div',
  'thead tr',
  'tbody tr',
  'id, event, state, [device+sequence]',
  'id, event, step',
  '++number, event',
  'no picture',
  'no small picture',
  'a screen stands outside of the stands',
]

test('every text of the screens is in the catalogue', () => {
  const outside = sources('web').filter(({ path }) => !catalogue.test(path))
  expect(outside.length).toBeGreaterThan(100)
  const found = outside.flatMap(({ path, text }) =>
    strayTexts(path, text)
      .filter((stray) => !allowed.includes(stray.text))
      .map((stray) => `${path}:${stray.line}: ${stray.text}`),
  )
  expect(found).toEqual([])
})

test('both languages have the same files', () => {
  const names = (language: string) =>
    sources(`web/words/${language}`).map(({ path }) => path.replace(`web/words/${language}/`, ''))
  expect(names('de').sort()).toEqual(names('en').sort())
})

describe('this reader of texts', () => {
  const texts = (source: string) => strayTexts('some.tsx', source).map(({ text }) => text)

  test.each([
    ['between tags', 'const a = <p>Points a match</p>', 'Points a match'],
    ['one word between tags', 'const a = <p>{value} seconds</p>', 'seconds'],
    ['in an attribute', 'const a = <Field label="Mass" />', 'Mass'],
    ['in an attribute of a browser', 'const a = <nav aria-label="Screens" />', 'Screens'],
    ['in a template', ['const a = <p title={`Robot $', '{name}`} />'].join(''), 'Robot …'],
    ['in a choice of what is shown', "const a = <p>{done ? 'Saved' : null}</p>", 'Saved'],
    ['behind a condition', "const a = <p>{done && 'Saved'}</p>", 'Saved'],
    ['in a function', "const say = () => 'There is no such game'", 'There is no such game'],
    ['in a list', "const heads = ['Top speed']", 'Top speed'],
  ])('sees a text %s', (_, source, text) => expect(texts(source)).toEqual([text]))

  test.each([
    ['of the catalogue', 'const a = <p title={words().shell.skip}>{words().shell.close}</p>'],
    ['for the machine', 'const a = <div className="sheet stack wide" style={{ border: "1px solid red" }} id="main" />'],
    ['in a type', "type Kind = 'one thing' | 'another thing'"],
    ['in an import', "import a from 'some folder/a.ts'"],
    ['without letters', 'const a = <p>× {value} %</p>'],
  ])('sees none %s', (_, source) => expect(texts(source)).toEqual([]))
})
