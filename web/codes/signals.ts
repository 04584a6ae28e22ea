/** A short tone and a tremble for what was read whole: eyes are on the other screen. Silent where the browser refuses. */
export function signalRead(sound: boolean): void {
  try {
    navigator.vibrate?.(80)
    if (sound) tone()
  } catch {
    // What was read stands on the screen too.
  }
}

let context: AudioContext | null = null

function tone(): void {
  context ??= new AudioContext()
  const [voice, volume] = [context.createOscillator(), context.createGain()]
  const now = context.currentTime
  voice.frequency.value = 880
  volume.gain.setValueAtTime(0.2, now)
  volume.gain.exponentialRampToValueAtTime(0.001, now + 0.15)
  voice.connect(volume).connect(context.destination)
  voice.start(now)
  voice.stop(now + 0.16)
}
