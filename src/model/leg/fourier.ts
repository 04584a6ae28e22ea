/**
 * Convolution of two rows of numbers by the fast Fourier transform, for rows too long to multiply out.
 * Both rows travel in one complex transform: (a + ib)² = a² − b² + 2iab, so that half the imaginary part of the
 * squared spectrum's inverse is the convolution. Errors are about 1e-16 of the sum of squares of the rows.
 * Source: Cooley & Tukey, Mathematics of Computation 19:297–301, 1965 (here decimation in frequency forward and in time
 * backward, so that nothing has to be put in order in between).
 */
export function convolveByTransform(a: Float64Array, b: Float64Array): Float64Array {
  const length = a.length + b.length - 1
  const size = sizeFor(length)
  const { real, imaginary } = scratchOf(size)
  real.set(a)
  real.fill(0, a.length)
  imaginary.set(b)
  imaginary.fill(0, b.length)
  forward(real, imaginary, size)
  for (let k = 0; k < size; k++) {
    const x = real[k] as number
    const y = imaginary[k] as number
    real[k] = x * x - y * y
    imaginary[k] = 2 * x * y
  }
  backward(real, imaginary, size)
  const out = new Float64Array(length)
  const half = 0.5 / size
  for (let i = 0; i < length; i++) out[i] = Math.max(0, (imaginary[i] as number) * half)
  return out
}

/**
 * success · Σ_{k < most} (qz)^k + (qz)^most for a row z, q = 1 − success: the distribution of the sum of min(K, most)
 * draws, K geometric. What lies beyond `length` must be negligible: it would come round to the row's beginning.
 */
export function geometricSum(row: Float64Array, success: number, most: number, length: number): Float64Array {
  const size = sizeFor(length)
  const { real, imaginary } = scratchOf(size)
  real.fill(0).set(row)
  imaginary.fill(0)
  forward(real, imaginary, size)
  for (let k = 0; k < size; k++) {
    const x = (1 - success) * (real[k] as number)
    const y = (1 - success) * (imaginary[k] as number)
    // Term by term, as a division by 1 − qz would lose digits where qz is near 1.
    let sumX = 1
    let sumY = 0
    let powerX = x
    let powerY = y
    for (let i = 1; i < most; i++) {
      sumX += powerX
      sumY += powerY
      const next = powerX * x - powerY * y
      powerY = powerX * y + powerY * x
      powerX = next
    }
    real[k] = success * sumX + powerX
    imaginary[k] = success * sumY + powerY
  }
  backward(real, imaginary, size)
  const out = new Float64Array(length)
  for (let i = 0; i < length; i++) out[i] = Math.max(0, (real[i] as number) / size)
  return out
}

/** The least power of two that holds so many numbers. */
export const sizeFor = (length: number): number => 2 ** Math.ceil(Math.log2(Math.max(1, length)))

const scratches = new Map<number, { real: Float64Array; imaginary: Float64Array }>()

function scratchOf(size: number) {
  const known = scratches.get(size) ?? { real: new Float64Array(size), imaginary: new Float64Array(size) }
  scratches.set(size, known)
  return known
}

interface Roots {
  readonly cosines: Float64Array
  readonly sines: Float64Array
}

const tables = new Map<number, Roots>()

/** For k below size/4, at 3k, 3k + 1, 3k + 2: the roots of k, 2k and 3k. */
function rootsOf(size: number): Roots {
  const known = tables.get(size)
  if (known) return known
  const count = Math.max(1, size / 4)
  const cosines = new Float64Array(3 * count)
  const sines = new Float64Array(3 * count)
  for (let k = 0; k < count; k++)
    for (let m = 1; m <= 3; m++) {
      cosines[3 * k + m - 1] = Math.cos((2 * Math.PI * k * m) / size)
      sines[3 * k + m - 1] = Math.sin((2 * Math.PI * k * m) / size)
    }
  const made = { cosines, sines }
  tables.set(size, made)
  return made
}

/** Two halvings at a time; the odd one, where there is one, comes last forward and first backward: it has no roots. */
function forward(real: Float64Array, imaginary: Float64Array, size: number): void {
  let block = size
  for (; block >= 4; block /= 4) quarterForward(real, imaginary, size, block)
  if (block === 2) pairs(real, imaginary, size)
}

function backward(real: Float64Array, imaginary: Float64Array, size: number): void {
  let block = 4
  if (Math.log2(size) % 2 === 1) {
    pairs(real, imaginary, size)
    block = 8
  }
  for (; block <= size; block *= 4) quarterBackward(real, imaginary, size, block)
}

function pairs(real: Float64Array, imaginary: Float64Array, size: number): void {
  for (let i = 0; i < size; i += 2) {
    const x = real[i] as number
    const y = imaginary[i] as number
    const u = real[i + 1] as number
    const v = imaginary[i + 1] as number
    real[i] = x + u
    imaginary[i] = y + v
    real[i + 1] = x - u
    imaginary[i + 1] = y - v
  }
}

function quarterForward(real: Float64Array, imaginary: Float64Array, size: number, block: number): void {
  const quarter = block / 4
  const { cosines, sines } = rootsOf(block)
  for (let start = 0; start < size; start += block)
    for (let k = 0; k < quarter; k++) {
      const a = start + k
      const b = a + quarter
      const c = b + quarter
      const d = c + quarter
      const ar = real[a] as number
      const ai = imaginary[a] as number
      const br = real[b] as number
      const bi = imaginary[b] as number
      const cr = real[c] as number
      const ci = imaginary[c] as number
      const dr = real[d] as number
      const di = imaginary[d] as number
      const sumR = ar + cr
      const sumI = ai + ci
      const otherR = br + dr
      const otherI = bi + di
      const offR = ar - cr
      const offI = ai - ci
      const turnR = bi - di
      const turnI = dr - br
      real[a] = sumR + otherR
      imaginary[a] = sumI + otherI
      const pr = sumR - otherR
      const pi = sumI - otherI
      const qr = offR + turnR
      const qi = offI + turnI
      const rr = offR - turnR
      const ri = offI - turnI
      const c1 = cosines[3 * k] as number
      const s1 = sines[3 * k] as number
      const c2 = cosines[3 * k + 1] as number
      const s2 = sines[3 * k + 1] as number
      const c3 = cosines[3 * k + 2] as number
      const s3 = sines[3 * k + 2] as number
      real[b] = pr * c2 + pi * s2
      imaginary[b] = pi * c2 - pr * s2
      real[c] = qr * c1 + qi * s1
      imaginary[c] = qi * c1 - qr * s1
      real[d] = rr * c3 + ri * s3
      imaginary[d] = ri * c3 - rr * s3
    }
}

function quarterBackward(real: Float64Array, imaginary: Float64Array, size: number, block: number): void {
  const quarter = block / 4
  const { cosines, sines } = rootsOf(block)
  for (let start = 0; start < size; start += block)
    for (let k = 0; k < quarter; k++) {
      const a = start + k
      const b = a + quarter
      const c = b + quarter
      const d = c + quarter
      const c1 = cosines[3 * k] as number
      const s1 = sines[3 * k] as number
      const c2 = cosines[3 * k + 1] as number
      const s2 = sines[3 * k + 1] as number
      const c3 = cosines[3 * k + 2] as number
      const s3 = sines[3 * k + 2] as number
      const xb = real[b] as number
      const yb = imaginary[b] as number
      const xc = real[c] as number
      const yc = imaginary[c] as number
      const xd = real[d] as number
      const yd = imaginary[d] as number
      const pr = xb * c2 - yb * s2
      const pi = yb * c2 + xb * s2
      const qr = xc * c1 - yc * s1
      const qi = yc * c1 + xc * s1
      const rr = xd * c3 - yd * s3
      const ri = yd * c3 + xd * s3
      const ar = real[a] as number
      const ai = imaginary[a] as number
      const sumR = ar + pr
      const sumI = ai + pi
      const otherR = qr + rr
      const otherI = qi + ri
      const offR = ar - pr
      const offI = ai - pi
      const turnR = ri - qi
      const turnI = qr - rr
      real[a] = sumR + otherR
      imaginary[a] = sumI + otherI
      real[c] = sumR - otherR
      imaginary[c] = sumI - otherI
      real[b] = offR + turnR
      imaginary[b] = offI + turnI
      real[d] = offR - turnR
      imaginary[d] = offI - turnI
    }
}
