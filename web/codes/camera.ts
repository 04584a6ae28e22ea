import { startDetector } from './detector.ts'

/** Why no picture comes: each has its own way out. */
export type CameraTrouble = 'insecure' | 'refused' | 'none' | 'busy'

/**
 * A square of the picture's middle is looked at, with so many dots a side at most, in turn: a code of 85 modules wants seven
 * for each, while a small one is found more surely where a dark sensor's grain is averaged away.
 */
const sides = [720, 400] as const

export interface Camera {
  stop(): void
  /** Whether it has a lamp. */
  lamp: boolean
  light(on: boolean): Promise<void>
}

export class NoCamera extends Error {
  readonly trouble: CameraTrouble
  constructor(trouble: CameraTrouble) {
    super(trouble)
    this.trouble = trouble
  }
}

async function openStream(): Promise<MediaStream> {
  // Browsers offer no camera at all to a page that came over plain http from another machine.
  if (!navigator.mediaDevices) throw new NoCamera('insecure')
  try {
    return await navigator.mediaDevices.getUserMedia({
      video: { facingMode: { ideal: 'environment' }, width: { ideal: 1280 }, height: { ideal: 720 } },
    })
  } catch (error) {
    const { name } = error as DOMException
    if (name === 'NotAllowedError' || name === 'SecurityError') throw new NoCamera('refused')
    throw new NoCamera(name === 'NotReadableError' || name === 'AbortError' ? 'busy' : 'none')
  }
}

function picture(video: HTMLVideoElement, canvas: OffscreenCanvas, side: number): ImageData {
  const edge = Math.min(video.videoWidth, video.videoHeight)
  const size = Math.min(side, edge)
  if (canvas.width !== size) canvas.width = canvas.height = size
  const context = canvas.getContext('2d', { willReadFrequently: true })!
  const [left, top] = [(video.videoWidth - edge) / 2, (video.videoHeight - edge) / 2]
  context.drawImage(video, left, top, edge, edge, 0, 0, size, size)
  return context.getImageData(0, 0, size, size)
}

/** Shows the camera's picture and says each code that is in it, again and again while it is there. Throws NoCamera. */
export async function openCamera(video: HTMLVideoElement, onText: (text: string) => void): Promise<Camera> {
  const stream = await openStream()
  const [track] = stream.getVideoTracks()
  const detector = await startDetector()
  const canvas = new OffscreenCanvas(1, 1)
  let over = false
  video.srcObject = stream
  await video.play()

  const look = async () => {
    for (let looks = 0; !over; looks++) {
      await nextPicture(video)
      if (over || video.videoWidth === 0) continue
      const found = await detector.detect(picture(video, canvas, sides[looks % 2]!))
      for (const text of found) if (!over) onText(text)
    }
  }
  void look().catch(() => undefined)

  const abilities = (track?.getCapabilities?.() ?? {}) as { torch?: boolean }
  return {
    stop() {
      over = true
      detector.end()
      for (const each of stream.getTracks()) each.stop()
      video.srcObject = null
    },
    lamp: abilities.torch === true,
    light: async (on) => track?.applyConstraints({ advanced: [{ torch: on } as MediaTrackConstraintSet] }),
  }
}

/** Waits for the camera's next picture, or a tenth of a second where the browser does not tell of it. */
function nextPicture(video: HTMLVideoElement): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 100)
    if ('requestVideoFrameCallback' in video) video.requestVideoFrameCallback(() => resolve())
  })
}
