import { type RefObject, useEffect, useRef, useState } from 'react'
import { unfold } from './unfold.ts'
import './parts.css'

/** Above this line of the window (px) a part's heading counts as passed. */
const passed = 130

/**
 * The parts of a long screen as links that stay at hand: those of `names` (by the id of their heading, in the screen's
 * order) that are there by now below `of`. The one being read is marked; a link opens its part where it is folded.
 */
export function PartList(props: {
  label: string
  names: readonly { id: string; name: string }[]
  of: RefObject<HTMLElement | null>
}) {
  const { names, of } = props
  const list = useRef<HTMLElement>(null)
  const [there, setThere] = useState('')
  const [here, setHere] = useState<string | null>(null)
  const sought = useRef(location.hash.slice(1))
  const ids = names.map(({ id }) => id).join(' ')

  // Parts come one after the other, each as soon as it is computed.
  useEffect(() => {
    const root = of.current
    if (!root) return
    const look = () => {
      const found = ids.split(' ').filter((id) => document.getElementById(id))
      setThere(found.join(' '))
      if (!found.includes(sought.current)) return
      // The address names a part that is drawn only now.
      const heading = document.getElementById(sought.current)
      sought.current = ''
      unfold(heading)
      heading?.scrollIntoView()
    }
    look()
    const observer = new MutationObserver(look)
    observer.observe(root, { childList: true, subtree: true })
    return () => observer.disconnect()
  }, [of, ids])

  useEffect(() => {
    const parts = there.split(' ')
    const read = () => {
      const above = parts.filter((id) => (document.getElementById(id)?.getBoundingClientRect().top ?? 1e9) < passed)
      const atEnd = innerHeight + scrollY >= document.documentElement.scrollHeight - 2
      setHere((atEnd && above.length > 0 ? parts.at(-1) : above.at(-1)) ?? null)
    }
    // With the next frame, which lays the page out anyway.
    const frame = requestAnimationFrame(read)
    addEventListener('scroll', read, { passive: true })
    return () => {
      cancelAnimationFrame(frame)
      removeEventListener('scroll', read)
    }
  }, [there])

  // On a narrow screen the row is moved so that the marked one stands in it.
  useEffect(() => {
    const row = list.current
    const link = here === null ? null : row?.querySelector<HTMLElement>(`[href="#${here}"]`)
    if (row && link) row.scrollLeft = link.offsetLeft - (row.clientWidth - link.offsetWidth) / 2
  }, [here])

  const shown = names.filter(({ id }) => there.split(' ').includes(id))
  if (shown.length < 2) return null
  return (
    <nav ref={list} className="part-list" aria-label={props.label}>
      {shown.map(({ id, name }) => (
        <a
          key={id}
          href={`#${id}`}
          aria-current={id === here ? 'location' : undefined}
          onClick={() => unfold(document.getElementById(id))}
        >
          {name}
        </a>
      ))}
    </nav>
  )
}
