import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { checkGame } from '../../../../src/model/documents/index.ts'
import type { Game } from '../../../../src/model/documents/types.ts'
import { keptAway } from '../../../../src/model/field/index.ts'
import { Later } from '../../../charts/Later.tsx'
import { Measured } from '../../../charts/Measured.tsx'
import { useEdit } from '../../../shell/fields/EditContext.tsx'
import { useUnits } from '../../../units/system.ts'
import { words } from '../../../words/catalogue.ts'
import { withSpot, withStart } from './additions.ts'
import { Checks } from './Checks.tsx'
import { ChosenForm } from './ChosenForm.tsx'
import { FieldCanvas } from './FieldCanvas.tsx'
import { sayAt, thingName } from './names.ts'
import { withCornerAdded } from './obstacles.ts'
import { imageOf, roundedPoint } from './partner.ts'
import { RobotPanel, RoutePanel, useDrivingRobot } from './RobotPanel.tsx'
import { without } from './removals.ts'
import { useSame, useStable } from './stable.ts'
import { AddAndPick, firstTools, grids, Tools } from './Tools.tsx'
import { isAbout, type Thing, thingsOf, withObstacles } from './things.ts'
import { useReach, useRoute } from './useAsked.ts'
import { useMoves } from './useMoves.ts'
import { ZoneMarks } from './ZoneMarks.tsx'
import { ZonePanel } from './ZonePanel.tsx'
import { filled, firstZone, placeOf, type Zone, zonePoints } from './zone.ts'
import './field.css'

const onField = (path: readonly (string | number)[]): boolean =>
  path[0] === 'field' || path[0] === 'starts' || path[2] === 'spots'

/** The field to scale, to be changed by hand: what stands on it, where a robot gets, and what does not fit. */
export function FieldEditor(props: {
  game: Game
  /** What the game's numbers come from. */
  source: string
  onReplace(game: Game): void
}) {
  const { game, onReplace } = props
  const edit = useEdit()
  const system = useUnits()
  const texts = words().field
  const [tools, setTools] = useState(firstTools)
  const [selected, setSelected] = useState<string | null>(null)
  const [route, setRoute] = useState({ from: '', to: '' })
  const [zone, setZone] = useState<Zone | null>(null)
  const [said, setSaid] = useState<string | null>(null)
  const driving = useDrivingRobot()
  const { footprint } = driving.robot

  const holder = useRef<HTMLDivElement>(null)
  const { length } = game.field
  const metresPerPixel = useCallback(() => {
    const drawn = holder.current?.querySelector('svg[role=group]')?.getBoundingClientRect().width ?? 640
    return length / (drawn - 2)
  }, [length])
  const grid = grids[system][tools.grid] ?? 0
  const away = keptAway(game.field.clearance, footprint)
  const moves = useMoves(game, { alike: tools.alike, grid, level: tools.level, away, metresPerPixel })
  const { shown } = moves

  const things = useMemo(() => thingsOf(shown), [shown])
  const thing = things.find(({ key }) => key === selected) ?? null
  const rules = useMemo(() => checkGame(shown).filter(({ path }) => onField(path)), [shown])
  // Routes are looked for among outlines that can be meant.
  const sound = rules.every(({ path }) => path[1] !== 'obstacles' || path[3] !== 'outline')
  const reach = useReach(sound ? shown : null, footprint)
  const problems = useSame(
    useMemo(
      () => [
        ...rules,
        ...(reach ?? []).filter(
          ({ path }) => !rules.some((rule) => rule.path.join() === path.join()) && isThere(things, path),
        ),
      ],
      [rules, reach, things],
    ),
  )
  const troubled = useMemo(
    () => new Set(things.filter((each) => problems.some(({ path }) => isAbout(each, path))).map(({ key }) => key)),
    [things, problems],
  )
  // The forms show what the document says: they are not drawn anew in each frame of a drag.
  const kept = useMemo(() => thingsOf(game).find(({ key }) => key === selected) ?? null, [game, selected])
  const found = useRoute(sound ? shown : null, driving.robot, route.from, route.to)
  const points = useMemo(() => (zone ? zonePoints(game, zone, footprint) : []), [game, zone, footprint])

  // A finger on what it moves does not scroll the page. Said here because touch-action is not heeded on shapes of SVG.
  useEffect(() => {
    const desk = holder.current
    const hold = (event: TouchEvent) => {
      if ((event.target as Element).closest('[data-finger=moves]')) event.preventDefault()
    }
    desk?.addEventListener('touchstart', hold, { passive: false })
    return () => desk?.removeEventListener('touchstart', hold)
  }, [])

  // What was just added or chosen by name gets the keyboard, once it is drawn.
  const [wanted, setWanted] = useState<string | null>(null)
  useEffect(() => {
    if (wanted === null) return
    holder.current?.querySelector<SVGGElement>(`[data-handle="${wanted}"]`)?.focus({ preventScroll: true })
    setWanted(null)
  }, [wanted])
  const choose = useStable((key: string | null, focus = true) => {
    setSelected(key === '' ? null : key)
    if (focus && key) setWanted(key)
  })
  const take = useStable(({ game: next, key }: { game: Game; key: string | null }) => {
    onReplace(next)
    choose(key)
  })
  const remove = useStable((gone: Thing) => {
    const next = without(game, gone, tools.alike)
    if (next) take(next)
  })
  const addCorner = useStable((obstacle: number, edge: number) =>
    take({
      game: withObstacles(game, withCornerAdded(game.field, { obstacle, edge, alike: tools.alike })),
      key: `field/obstacles/${obstacle}/outline/${edge + 1}`,
    }),
  )
  const putBeside = useStable((of: Thing) => {
    const at = roundedPoint([of.at[0], Math.min(game.field.width, of.at[1] + 0.6)])
    take(of.kind === 'spot' ? withSpot(game, of.list, of.index, at) : withStart(game, at))
  })
  const drawPartner = useStable((index: number) => {
    const { id, name, outline } = game.field.obstacles[index]!
    const other = { id: `${id}-other`, name: texts.names.partner(name) }
    const image = { ...other, outline: outline.map((corner) => imageOf(game.field, corner)) }
    take({ game: withObstacles(game, [...game.field.obstacles, image]), key: `field/obstacles/${index}` })
  })
  const actions = useMemo(
    () => ({ onRemove: remove, onBeside: putBeside, onAddCorner: addCorner, onDrawPartner: drawPartner }),
    [remove, putBeside, addCorner, drawPartner],
  )
  const pick = useCallback((key: string) => choose(key, false), [choose])
  const changeRoute = useCallback((from: string, to: string) => setRoute({ from, to }), [])
  const beginZone = useStable(() => {
    setSaid(null)
    setZone(firstZone(game))
  })
  const fill = useStable(() => {
    if (!zone) return
    const { list, index } = placeOf(zone)
    const next = filled(game, zone, points)
    onReplace(next)
    setZone(null)
    setSaid(texts.fill.done(next[list][index]!.spots.length, next[list][index]!.name))
  })

  return (
    <div className="field-desk">
      <div className="stack field-drawing" ref={holder}>
        <Tools tools={tools} onTools={setTools} />
        <Measured drawn="field" data={shown}>
          {(width) => (
            <div className="scroll" tabIndex={tools.zoom > 0 ? 0 : undefined}>
              <FieldCanvas
                game={shown}
                width={width * 2 ** tools.zoom}
                selected={selected}
                troubled={troubled}
                guides={moves.guides}
                route={found.route && route.from !== '' && route.to !== '' ? found.route.path : null}
                footprint={footprint}
                away={away}
                show={tools}
                readOnly={edit.readOnly}
                actionsOf={(each) => ({
                  ...moves.actionsOf(each),
                  onSelect: () => choose(each.key, false),
                  onRemove: () => remove(each),
                })}
                onAddCorner={addCorner}
                metresPerPixel={metresPerPixel}
                over={(frame) =>
                  zone && <ZoneMarks {...{ game, frame, zone, points, grid, metresPerPixel }} onZone={setZone} />
                }
              />
            </div>
          )}
        </Measured>
        <p data-testid="readout">{thing ? texts.readout(thingName(thing), sayAt(thing.at, system)) : '\u00a0'}</p>
        {!edit.readOnly && <p className="soft small">{texts.desksHelp}</p>}
        <Checks game={game} problems={problems} looking={sound && reach === null} onShow={choose} />
      </div>
      <div className="stack field-side">
        <Later>
          <AddAndPick game={game} selected={thing} readOnly={edit.readOnly} onPick={pick} onAdd={take} />
          <section className="stack" aria-labelledby="chosen-title">
            <h3 id="chosen-title">{texts.chosen.title}</h3>
            <ChosenForm game={game} thing={kept} problems={problems} alike={tools.alike} actions={actions} />
          </section>
          {!edit.readOnly && (
            <ZonePanel {...{ game, zone, points, said }} onZone={setZone} onBegin={beginZone} onFill={fill} />
          )}
        </Later>
      </div>
      <div className="columns field-below">
        <Later>
          <RoutePanel
            game={game}
            {...route}
            onChange={changeRoute}
            found={found}
            robot={driving.robot}
            source={`${props.source} ${driving.source}`}
          />
          <RobotPanel {...driving} />
        </Later>
      </div>
    </div>
  )
}

/** An answer that is behind may speak of what is gone already. */
const isThere = (things: readonly Thing[], path: readonly (string | number)[]): boolean =>
  path[0] === 'field' || things.some((thing) => isAbout(thing, path))
