import { useEffect, useRef, useState } from 'react'
import { CodeError, Collector } from '../../src/model/scouting/code/index.ts'
import { type Camera, type CameraTrouble, NoCamera, openCamera } from './camera.ts'
import { signalRead } from './signals.ts'
import type { CodeTexts } from './texts.ts'
import './codes.css'

interface Progress {
  have: number
  needed: number
}

/**
 * The camera's picture, and how much of a message is in. Messages come out whole; what came of them stands below, in
 * `children`. Several phones may be held before it one after the other without a tap in between.
 */
export function CodeReader(props: { texts: CodeTexts; onMessage: (message: Uint8Array) => void; onClose: () => void }) {
  const { texts } = props
  const video = useRef<HTMLVideoElement>(null)
  const [camera, setCamera] = useState<Camera | null>(null)
  const [trouble, setTrouble] = useState<CameraTrouble | null>(null)
  const [problem, setProblem] = useState<CodeError['code'] | null>(null)
  const [progress, setProgress] = useState<Progress | null>(null)
  const [lit, setLit] = useState(false)
  const [sound, setSound] = useState(true)
  const [round, setRound] = useState(0)
  const latest = useRef({ onMessage: props.onMessage, sound })
  latest.current = { onMessage: props.onMessage, sound }

  // biome-ignore lint/correctness/useExhaustiveDependencies: another round opens the camera anew
  useEffect(() => {
    const collector = new Collector()
    let open: Camera | null = null
    let gone = false
    const take = (text: string) => {
      try {
        const { have, needed, message } = collector.add(text)
        setProblem(null)
        setProgress((before) => (before?.have === have && before.needed === needed ? before : { have, needed }))
        if (!message) return
        signalRead(latest.current.sound)
        latest.current.onMessage(message)
      } catch (error) {
        // A torn picture's code that does not add up is read again from the next picture: not worth a word.
        if (error instanceof CodeError && error.code !== 'damaged') setProblem(error.code)
      }
    }
    openCamera(video.current!, take).then(
      (camera) => {
        open = camera
        if (gone) camera.stop()
        else setCamera(camera)
      },
      (error: unknown) => setTrouble(error instanceof NoCamera ? error.trouble : 'none'),
    )
    return () => {
      gone = true
      open?.stop()
    }
  }, [round])

  const again = () => {
    setTrouble(null)
    setRound(round + 1)
  }
  return (
    <section className="code-reader stack" aria-label={texts.reader}>
      {trouble ? (
        <div role="alert" className="stack">
          <p>{texts.trouble[trouble]}</p>
          <p>
            <button type="button" className="code-button" onClick={again}>
              {texts.again}
            </button>
          </p>
        </div>
      ) : (
        <p>{camera ? texts.hold : texts.opening}</p>
      )}
      <video ref={video} muted playsInline hidden={trouble !== null} aria-label={texts.picture} />
      {!trouble && <Squares progress={progress} texts={texts} />}
      {problem && <p role="alert">{texts.problem[problem]}</p>}
      <p className="code-acts">
        {camera?.lamp && (
          <button
            type="button"
            className="code-button"
            aria-pressed={lit}
            onClick={() => void camera.light(!lit).then(() => setLit(!lit))}
          >
            {texts.lamp}
          </button>
        )}
        {!trouble && (
          <button type="button" className="code-button" aria-pressed={sound} onClick={() => setSound(!sound)}>
            {texts.sound}
          </button>
        )}
        <button type="button" className="code-button" onClick={props.onClose}>
          {texts.closeCamera}
        </button>
      </p>
    </section>
  )
}

/** A square for each frame that is needed, filled for those that are in. */
function Squares(props: { progress: Progress | null; texts: CodeTexts }) {
  const { progress, texts } = props
  if (!progress) return <p role="status">{texts.nothingYet}</p>
  const { have, needed } = progress
  return (
    <div className="code-progress">
      <span aria-hidden="true" className="code-squares">
        {Array.from({ length: needed }, (_, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: squares are nothing but their places
          <i key={index} className={index < have ? 'in' : undefined} />
        ))}
      </span>
      <span role="status">{have === needed ? texts.whole : texts.partly(have, needed)}</span>
    </div>
  )
}
