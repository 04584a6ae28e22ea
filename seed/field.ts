import type { Field, Finish, Point, Source, Start } from '../src/model/documents/types.ts'

/** The harbour's size (m). */
export const harbour = { length: 16.6, width: 8.2 }

const acrossTheMiddle = (outline: Point[]): Point[] =>
  outline.map(([x, y]): Point => [Math.round((harbour.length - x) * 1000) / 1000, y])

const jetty: Point[] = [
  [5, 0],
  [5.4, 0],
  [5.4, 1.5],
  [6.4, 1.5],
  [6.4, 1.9],
  [5, 1.9],
]

const dolphin: Point[] = [
  [5.2, 6.3],
  [5.6, 5.9],
  [6, 6.3],
  [5.6, 6.7],
]

const gantryLegs: Point[] = [
  [2.9, 3.5],
  [3.3, 3.5],
  [3.3, 4.7],
  [2.9, 4.7],
]

/** The Breakwater field: two halves that mirror each other across the middle, with a sand bar on the line between them. */
export const field: Field = {
  ...harbour,
  clearance: 0.05,
  symmetry: 'mirror',
  obstacles: [
    {
      id: 'bar',
      name: 'Sand bar',
      outline: [
        [7.6, 4.1],
        [8, 3.3],
        [8.6, 3.3],
        [9, 4.1],
        [8.6, 4.9],
        [8, 4.9],
      ],
    },
    { id: 'jetty-home', name: 'Home jetty', outline: jetty },
    { id: 'jetty-far', name: 'Far jetty', outline: acrossTheMiddle(jetty) },
    { id: 'dolphin-home', name: 'Home dolphin', outline: dolphin },
    { id: 'dolphin-far', name: 'Far dolphin', outline: acrossTheMiddle(dolphin) },
    { id: 'gantry-legs-home', name: 'Legs of the home gantry', outline: gantryLegs },
    { id: 'gantry-legs-far', name: 'Legs of the far gantry', outline: acrossTheMiddle(gantryLegs) },
  ],
}

export const starts: Start[] = [
  { id: 'quay-south', name: 'South quay', at: [1.1, 2.2] },
  { id: 'quay-middle', name: 'Middle quay', at: [1.1, 4.1] },
  { id: 'quay-north', name: 'North quay', at: [1.1, 6] },
]

export const sources: Source[] = [
  {
    id: 'outer',
    name: 'Outer slipway',
    piece: 'buoy',
    spots: [
      { id: 'outer.south', at: [13.2, 0.6] },
      { id: 'outer.north', at: [13.2, 7.6] },
    ],
    slots: 2,
    stock: null,
    restock: null,
    shared: false,
  },
  {
    id: 'channel',
    name: 'Channel slipway',
    piece: 'buoy',
    spots: [{ id: 'channel.ramp', at: [8.3, 0.7] }],
    slots: 1,
    stock: 10,
    restock: { every: 15, size: 2 },
    shared: true,
  },
]

export const finishes: Finish[] = [
  {
    id: 'dry-dock',
    name: 'Dry dock',
    spots: [
      { id: 'dry-dock.south', at: [3.9, 2.6] },
      { id: 'dry-dock.north', at: [3.9, 5.9] },
    ],
    slots: 3,
    points: 4,
  },
  {
    id: 'davit',
    name: 'Davit',
    spots: [
      { id: 'davit.south', at: [6.5, 2.9] },
      { id: 'davit.north', at: [6.5, 5.3] },
    ],
    slots: 2,
    points: 14,
  },
]
