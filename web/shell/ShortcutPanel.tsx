import { words } from '../words/catalogue.ts'
import { Panel } from './Panel.tsx'
import { ShortcutList } from './ShortcutList.tsx'

/** All keyboard shortcuts, over whatever screen is shown. */
export default function ShortcutPanel(props: { onClose(): void }) {
  return (
    <Panel title={words().shortcuts.title} open onClose={props.onClose}>
      <ShortcutList />
    </Panel>
  )
}
