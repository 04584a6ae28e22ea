// @vitest-environment jsdom
import { createRoot } from 'react-dom/client'
import { expect, test } from 'vitest'
import { Stagger } from '../../../web/screens/tradeoffs/Stagger.tsx'

const screen = (late: boolean) => (
  <Stagger>
    <h2>First</h2>
    {late && <p>Late</p>}
    <input aria-label="last" />
  </Stagger>
)

test('a part that appears above leaves those below where they are, with what was typed in them', async () => {
  const page = document.createElement('main')
  const root = createRoot(page)
  root.render(screen(false))
  await expect.poll(() => page.querySelector('input')).not.toBeNull()
  const input = page.querySelector('input')!
  input.value = 'Leave the hook out'
  root.render(screen(true))
  await expect.poll(() => page.textContent).toBe('FirstLate')
  expect(page.querySelector('input')).toBe(input)
  expect([...page.children].map(({ tagName }) => tagName)).toEqual(['H2', 'P', 'INPUT'])
  root.unmount()
})
