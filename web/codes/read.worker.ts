import jsQR from 'jsqr'

/** A picture of the camera, and the text of the code in it. */
self.onmessage = ({ data }: MessageEvent<ImageData>) => {
  const found = jsQR(data.data, data.width, data.height, { inversionAttempts: 'dontInvert' })
  self.postMessage(found && found.data !== '' ? found.data : null)
}
