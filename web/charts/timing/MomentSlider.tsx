import { useId } from 'react'

const steps = 1000

/** A movement's time from its start to its end: for keyboard, mouse and touch alike. */
export function MomentSlider(props: { label: string; share: number; said: string; onShare(share: number): void }) {
  const id = useId()
  return (
    <div className="moment-slider">
      <label htmlFor={id} className="small">
        {props.label}
      </label>
      <input
        id={id}
        type="range"
        min={0}
        max={steps}
        step={5}
        value={Math.round(props.share * steps)}
        aria-valuetext={props.said}
        onChange={(event) => props.onShare(Number(event.currentTarget.value) / steps)}
      />
    </div>
  )
}
