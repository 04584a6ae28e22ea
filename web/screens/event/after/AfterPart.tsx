import { NativeSelect } from '@mantine/core'
import { useLocation, useSearch } from 'wouter'
import { useAfter } from '../../../data/after.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import type { EventPage } from '../EventFrame.tsx'
import { useOurTeam } from '../useOurTeam.ts'
import { Published } from './Published.tsx'
import { Report } from './Report.tsx'
import { Slide } from './Slide.tsx'
import './after.css'

const views = ['report', 'slide', 'publish'] as const
type View = (typeof views)[number]

/** Predicted, seen, changed: whole, on one slide, and what can be given to others. The address says which, whose and by which design. */
export function AfterPart(page: EventPage) {
  const texts = words().after
  const asked = new URLSearchParams(useSearch())
  const [path, go] = useLocation()
  const { team, choose } = useOurTeam(page)
  const view = views.find((each) => each === asked.get('view')) ?? 'report'
  const set = (name: string, value: string) => {
    asked.set(name, value)
    go(`${path}?${asked}`, { replace: true })
  }
  if (team === null) return <Loading what={texts.what} />
  return (
    <section className="stack" aria-labelledby="after">
      <div className="sheet stack no-print">
        <h2 id="after">{texts.title}</h2>
        <div className="row" role="group" aria-label={texts.viewsLabel}>
          {views.map((each: View) => (
            <button
              key={each}
              type="button"
              className="after-view"
              aria-pressed={each === view}
              onClick={() => set('view', each)}
            >
              {texts.views[each]}
            </button>
          ))}
        </div>
        <NativeSelect
          label={texts.team}
          value={team}
          data={page.event.body.teams.map((each) => each.team)}
          onChange={({ currentTarget: { value } }) => choose(value)}
        />
      </div>
      <Found
        page={page}
        team={team}
        design={asked.get('design')}
        view={view}
        chooseDesign={(id) => set('design', id)}
      />
    </section>
  )
}

function Found(props: {
  page: EventPage
  team: string
  design: string | null
  view: View
  chooseDesign(id: string): void
}) {
  const { page, team, design, view } = props
  const texts = words().after
  const after = useAfter({ event: page.event.id, team, design })
  if (after.error && !after.data)
    return <Trouble title={texts.trouble} error={after.error} retry={() => void after.refetch()} />
  if (!after.data) return <Loading what={texts.what} />
  const { report } = after.data
  if (view === 'publish') return <Published page={page} team={team} design={design} />
  const nothing = report.ranking === null && report.watched === 0 && report.matches.every(({ forecast }) => !forecast)
  if (nothing)
    return (
      <Empty title={texts.none}>
        <p>{texts.noneHow}</p>
      </Empty>
    )
  if (view === 'slide') return <Slide page={page} after={after.data} />
  return <Report page={page} after={after.data} chooseDesign={props.chooseDesign} />
}
