import { type ReactNode, useId } from 'react'
import type { Game, Point, Robot } from '../../../../src/model/documents/types.ts'
import { type FieldFrame, FieldMap } from '../../../charts/FieldMap.tsx'
import { useUnits } from '../../../units/system.ts'
import { words } from '../../../words/catalogue.ts'
import { Guides, KeptAway, OtherAlliance, RobotAt } from './background.tsx'
import { Handle, type HandleActions } from './Handle.tsx'
import { sayAt, thingName } from './names.ts'
import { CornerShape, EdgePlus, ObstacleShape, SpotShape, StartShape } from './shapes.tsx'
import { cornersOf, obstaclesOf, spotsOf, startsOf, type Thing } from './things.ts'

export interface CanvasProps {
  game: Game
  width: number
  selected: string | null
  /** Keys of what does not fit. */
  troubled: ReadonlySet<string>
  guides: { x?: number; y?: number }
  route: Point[] | null
  footprint: Robot['footprint']
  away: number
  show: { others: boolean; kept: boolean }
  readOnly: boolean
  actionsOf(thing: Thing): HandleActions
  onAddCorner(obstacle: number, edge: number): void
  metresPerPixel(): number
  /** What else lies on the drawing: the zone that is being filled. */
  over?: (frame: FieldFrame) => ReactNode
}

/** The field to scale with everything on it to be moved. Corners are shown of the obstacle that is chosen. */
export function FieldCanvas(props: CanvasProps) {
  const { game, selected, show } = props
  const clip = useId()
  const chosen = obstaclesOf(game).find(({ key }) => selected === key || selected?.startsWith(`${key}/`))
  return (
    <FieldMap
      game={game}
      width={props.width}
      marks={props.route ? { route: props.route } : undefined}
      under={(frame) => show.kept && <KeptAway game={game} frame={frame} away={props.away} clip={`${clip}kept`} />}
    >
      {(frame) => (
        <>
          {show.others && <OtherAlliance game={game} frame={frame} />}
          {props.route && (
            <>
              <RobotAt frame={frame} at={props.route[0]!} footprint={props.footprint} />
              <RobotAt frame={frame} at={props.route.at(-1)!} footprint={props.footprint} />
            </>
          )}
          <Things {...props} frame={frame} things={obstaclesOf(game).filter((thing) => thing !== chosen)} />
          {chosen && <Things {...props} frame={frame} things={[chosen]} />}
          <Things {...props} frame={frame} things={[...startsOf(game), ...spotsOf(game)]} />
          {chosen && <Corners {...props} frame={frame} index={chosen.index} />}
          {props.over?.(frame)}
          <Guides game={game} frame={frame} guides={props.guides} />
        </>
      )}
    </FieldMap>
  )
}

function Things(props: CanvasProps & { frame: FieldFrame; things: Thing[] }) {
  const { game, frame, selected, troubled } = props
  const system = useUnits()
  return props.things.map((thing) => {
    const shared = { frame, at: thing.at, selected: selected === thing.key, troubled: troubled.has(thing.key) }
    return (
      <Handle
        key={thing.key}
        handleKey={thing.key}
        name={thingName(thing)}
        value={sayAt(thing.at, system)}
        at={thing.at}
        most={game.field.length}
        metresPerPixel={props.metresPerPixel}
        touch={thing.kind !== 'obstacle' || selected === thing.key}
        readOnly={props.readOnly}
        troubled={shared.troubled}
        actions={props.actionsOf(thing)}
      >
        {thing.kind === 'spot' && <SpotShape {...shared} letter={thing.letter} strong={thing.list === 'goals'} />}
        {thing.kind === 'start' && <StartShape {...shared} />}
        {thing.kind === 'corner' && <CornerShape {...shared} />}
        {thing.kind === 'obstacle' && (
          <ObstacleShape {...shared} outline={game.field.obstacles[thing.index]!.outline} />
        )}
      </Handle>
    )
  })
}

function Corners(props: CanvasProps & { frame: FieldFrame; index: number }) {
  const corners = cornersOf(props.game, props.index)
  const texts = words().field
  return (
    <>
      {!props.readOnly &&
        corners.map((corner, edge) => (
          <EdgePlus
            key={corner.key}
            frame={props.frame}
            a={corner.at}
            b={corners[(edge + 1) % corners.length]!.at}
            label={texts.addCornerAfter(corner.name, edge + 1)}
            onPress={() => props.onAddCorner(props.index, edge)}
          />
        ))}
      <Things {...props} things={corners} />
    </>
  )
}
