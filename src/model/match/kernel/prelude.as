// What memory.ts says in plain form, for the compiled one. In front of events.ts; constants of layout.ts come before it.
@inline function toReal(x: i32): f64 { return <f64>x }
@inline function toWhole(x: f64): i32 { return <i32>x }
@inline function real(place: i32): f64 { return load<f64>(<usize>place << 3) }
@inline function setReal(place: i32, x: f64): void { store<f64>(<usize>place << 3, x) }
@inline function whole(place: i32): i32 { return load<i32>(<usize>place << 2) }
@inline function setWhole(place: i32, x: i32): void { store<i32>(<usize>place << 2, x) }
@inline function byte(place: i32): i32 { return <i32>load<u8>(<usize>place) }
@inline function word(place: i32): f64 { return <f64>load<u32>(<usize>place << 2) }

@external("host", "fillChoices")
declare function fillChoices(mind: i32, stand: i32, room: i32, t: i32): i32
@external("host", "fillList")
declare function fillList(mind: i32, stand: i32, room: i32, t: i32): i32
@external("host", "standAfter")
declare function standAfter(leg: i32, load: i32): i32
@external("host", "tell")
declare function tell(kind: i32, robot: i32, from: f64, to: f64, leg: i32, more: i32): void

// Philox4x32-10: Salmon, Moraes, Dror & Shaw, Parallel random numbers: as easy as 1, 2, 3 (SC'11).
export function drawWords(place: i32, count: i32, name: i32, leg: i32, replicate: i32): void {
  let to: usize = <usize>place << 2
  const keyA: u32 = load<u32>(<usize>AT_key << 2)
  const keyB: u32 = load<u32>((<usize>AT_key << 2) + 4)
  for (let k: i32 = 0; k < count; k += 4) {
    let a: u32 = <u32>k >> 2
    let b: u32 = <u32>leg
    let c: u32 = <u32>name
    let d: u32 = <u32>replicate
    let x: u32 = keyA
    let y: u32 = keyB
    for (let round: i32 = 0; round < 10; round++) {
      const one: u64 = <u64>a * 0xd2511f53
      const two: u64 = <u64>c * 0xcd9e8d57
      a = <u32>(two >> 32) ^ b ^ x
      b = <u32>two
      c = <u32>(one >> 32) ^ d ^ y
      d = <u32>one
      x += 0x9e3779b9
      y += 0xbb67ae85
    }
    store<u32>(to, a, 0)
    store<u32>(to, b, 4)
    store<u32>(to, c, 8)
    store<u32>(to, d, 12)
    to += 16
  }
}
