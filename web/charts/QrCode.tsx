import qrcode from 'qrcode-generator'

/** The dark modules of a QR code (ISO/IEC 18004), row by row, with the error correction of level M. */
export function qrModules(text: string): boolean[][] {
  const code = qrcode(0, 'M')
  code.addData(text)
  code.make()
  const size = code.getModuleCount()
  return Array.from({ length: size }, (_, row) =>
    Array.from({ length: size }, (__, column) => code.isDark(row, column)),
  )
}

/** Light modules all round, without which readers do not find the code: four, as the standard asks for. */
const quiet = 4

/** An address to be scanned with a phone. Black on white in every theme, because readers expect that. */
export function QrCode(props: { text: string; label: string; width: number }) {
  const modules = qrModules(props.text)
  const size = modules.length + 2 * quiet
  const path = modules
    .flatMap((row, y) => row.map((dark, x) => (dark ? `M${x + quiet} ${y + quiet}h1v1h-1z` : '')))
    .join('')
  return (
    <svg
      width={props.width}
      height={props.width}
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={props.label}
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  )
}
