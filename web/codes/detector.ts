/** Finds the texts of codes in pictures. */
export interface Detector {
  detect(picture: ImageData): Promise<string[]>
  end(): void
}

interface BrowsersOwn {
  detect(picture: ImageData): Promise<{ rawValue: string }[]>
}
interface BrowsersOwnClass {
  new (options: { formats: string[] }): BrowsersOwn
  getSupportedFormats(): Promise<string[]>
}

/** The browser's own reader, where it has one: quicker than ours, and it finds several codes in one picture. */
async function browsersOwn(): Promise<Detector | null> {
  const own = (globalThis as { BarcodeDetector?: BrowsersOwnClass }).BarcodeDetector
  try {
    if (!own || !(await own.getSupportedFormats()).includes('qr_code')) return null
    const detector = new own({ formats: ['qr_code'] })
    return {
      detect: async (picture) => (await detector.detect(picture)).map(({ rawValue }) => rawValue),
      end: () => undefined,
    }
  } catch {
    return null
  }
}

/** Ours, in a worker, so that the picture on the screen goes on. One picture at a time. */
function ours(): Detector {
  const worker = new Worker(new URL('./read.worker.ts', import.meta.url), { type: 'module' })
  return {
    detect: (picture) =>
      new Promise((resolve, reject) => {
        worker.onmessage = ({ data }: MessageEvent<string | null>) => resolve(data === null ? [] : [data])
        worker.onerror = (event) => reject(new Error(event.message))
        worker.postMessage(picture, [picture.data.buffer])
      }),
    end: () => worker.terminate(),
  }
}

/** The browser's own as long as it works: some have the class, and no reader behind it. */
export async function startDetector(): Promise<Detector> {
  let detector = (await browsersOwn()) ?? ours()
  let trusted = false
  return {
    detect: async (picture) => {
      try {
        return await detector.detect(picture)
      } catch (error) {
        if (trusted) throw error
        trusted = true
        detector.end()
        detector = ours()
        return detector.detect(picture)
      }
    },
    end: () => detector.end(),
  }
}
