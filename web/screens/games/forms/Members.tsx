import { Button } from '@mantine/core'
import { type ReactNode, useEffect, useRef, useState } from 'react'
import type { Place } from '../../../data/difference.ts'
import { useEdit } from '../../../shell/fields/EditContext.tsx'
import { words } from '../../../words/catalogue.ts'

interface Member {
  id: string
  name: string
}

/** A list of the game with names: open one, add, move, remove. What is closed is not drawn. */
export function Members<T extends Member>(props: {
  place: Place
  items: readonly T[]
  /** What one is called, before its name. */
  one: string
  addLabel: string
  least?: number
  most?: number
  onAdd(): void
  onRemove(item: T): void
  children(item: T, index: number): ReactNode
}) {
  const { items, place, least = 0, most = 20 } = props
  const edit = useEdit()
  const texts = words().games.members
  const [fresh, setFresh] = useState<number | null>(null)
  const list = useRef<HTMLDivElement>(null)
  const added = useRef(false)
  // The next thing to type is the new one's name; it came above the button, perhaps out of sight.
  useEffect(() => {
    if (!added.current || items.length - 1 !== fresh) return
    added.current = false
    const at = [...place, items.length - 1, 'name'].join('/')
    const name = list.current?.querySelector<HTMLInputElement>(`[data-place="${CSS.escape(at)}"]`)
    name?.focus()
    name?.select()
  }, [items.length, fresh, place])
  const move = (from: number, by: number) => {
    const next = [...items]
    const [item] = next.splice(from, 1)
    next.splice(from + by, 0, item!)
    edit.set(place, next)
  }
  return (
    <div className="stack" ref={list}>
      {items.length === 0 && <p className="soft">{texts.none}</p>}
      {items.map((item, index) => (
        <OneMember key={item.id} title={`${props.one}: ${item.name}`} open={fresh === index}>
          {() => (
            <>
              {props.children(item, index)}
              {!edit.readOnly && (
                <div className="row">
                  <Button
                    size="compact-md"
                    variant="default"
                    disabled={index === 0}
                    aria-label={texts.up(item.name)}
                    onClick={() => move(index, -1)}
                  >
                    {texts.short.up}
                  </Button>
                  <Button
                    size="compact-md"
                    variant="default"
                    disabled={index === items.length - 1}
                    aria-label={texts.down(item.name)}
                    onClick={() => move(index, 1)}
                  >
                    {texts.short.down}
                  </Button>
                  <Button
                    size="compact-md"
                    variant="subtle"
                    disabled={items.length <= least}
                    aria-label={texts.remove(item.name)}
                    onClick={() => props.onRemove(item)}
                  >
                    {texts.short.remove}
                  </Button>
                  {items.length <= least && <span className="soft small">{texts.least}</span>}
                </div>
              )}
            </>
          )}
        </OneMember>
      ))}
      {!edit.readOnly && (
        <div>
          <Button
            variant="default"
            disabled={items.length >= most}
            onClick={() => {
              setFresh(items.length)
              added.current = true
              props.onAdd()
            }}
          >
            {props.addLabel}
          </Button>
        </div>
      )}
    </div>
  )
}

function OneMember(props: { title: string; open: boolean; children(): ReactNode }) {
  const [open, setOpen] = useState(props.open)
  return (
    <details className="fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{props.title}</summary>
      {open && (
        <div className="stack" style={{ paddingTop: '0.5rem' }}>
          {props.children()}
        </div>
      )}
    </details>
  )
}
