// What memory.ts says in plain form, for the compiled one. In front of events.ts; constants of layout.ts come before it.
@inline function toReal(x: i32): f64 { return <f64>x }
@inline function toWhole(x: f64): i32 { return <i32>x }
@inline function real(place: i32): f64 { return load<f64>(<usize>place << 3) }
@inline function setReal(place: i32, x: f64): void { store<f64>(<usize>place << 3, x) }
@inline function whole(place: i32): i32 { return load<i32>(<usize>place << 2) }
@inline function setWhole(place: i32, x: i32): void { store<i32>(<usize>place << 2, x) }
@inline function byte(place: i32): i32 { return <i32>load<u8>(<usize>place) }
@inline function word(place: i32): f64 { return <f64>load<u32>(<usize>place << 2) }
@inline function share(place: i32, count: i32): i32 { return <i32>((<u64>load<u32>(<usize>place << 2) * <u64>count) >> 32) }
@inline function earliest(place: i32): f64 {
  const at: usize = <usize>place << 3
  const two: v128 = f64x2.pmin(f64x2.pmin(v128.load(at, 0), v128.load(at, 16)), v128.load(at, 32))
  return f64x2.extract_lane(f64x2.pmin(two, v128.shuffle<i64>(two, two, 1, 0)), 0)
}
@inline function notAfter(place: i32, time: f64): i32 {
  const at: usize = <usize>place << 3
  const then: v128 = f64x2.splat(time)
  return i64x2.bitmask(f64x2.le(v128.load(at, 0), then)) | i64x2.bitmask(f64x2.le(v128.load(at, 16), then)) << 2 |
    i64x2.bitmask(f64x2.le(v128.load(at, 32), then)) << 4
}
@inline function lowest(bits: i32): i32 { return ctz<i32>(bits) }

@external("host", "fillChoices")
declare function fillChoices(mind: i32, stand: i32, room: i32, t: i32): i32
@external("host", "fillList")
declare function fillList(mind: i32, stand: i32, room: i32, t: i32): i32
@external("host", "standAfter")
declare function standAfter(leg: i32, load: i32): i32
@external("host", "tell")
declare function tell(kind: i32, robot: i32, from: f64, to: f64, leg: i32, more: i32): void

// Philox4x32-10: Salmon, Moraes, Dror & Shaw, Parallel random numbers: as easy as 1, 2, 3 (SC'11). Two blocks of four words
// at a time, which takes no longer than one: numbers 0 and 2 of both are multiplied together. There is room for both.
export function drawWords(place: i32, count: i32, name: i32, leg: i32, replicate: i32): void {
  let to: usize = <usize>place << 2
  const first: v128 = v128.load64_splat(<usize>AT_key << 2)
  const step: v128 = i32x4(0x9e3779b9, 0xbb67ae85, 0x9e3779b9, 0xbb67ae85)
  const factors: v128 = i32x4(0xd2511f53, 0xcd9e8d57, 0xd2511f53, 0xcd9e8d57)
  for (let k: i32 = 0; k < count; k += 8) {
    const block: i32 = k >> 2
    let even: v128 = i32x4.replace_lane(i32x4.replace_lane(i32x4.splat(name), 0, block), 2, block + 1)
    let odd: v128 = i32x4.replace_lane(i32x4.replace_lane(i32x4.splat(replicate), 0, leg), 2, leg)
    let key: v128 = first
    for (let round: i32 = 0; round < 10; round++) {
      const one: v128 = i64x2.extmul_low_i32x4_u(even, factors)
      const two: v128 = i64x2.extmul_high_i32x4_u(even, factors)
      even = v128.xor(v128.xor(v128.shuffle<i32>(one, two, 3, 1, 7, 5), odd), key)
      odd = v128.shuffle<i32>(one, two, 2, 0, 6, 4)
      key = i32x4.add(key, step)
    }
    v128.store(to, v128.shuffle<i32>(even, odd, 0, 4, 1, 5), 0)
    v128.store(to, v128.shuffle<i32>(even, odd, 2, 6, 3, 7), 16)
    to += 32
  }
}
