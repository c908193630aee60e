/** Quilts to begin with, all invented, and the empty sheet. Sizes are finished sizes in inches, for drawing to one scale. */
export interface Start {
  key: string;
  name: string;
  across: number;
  down: number;
  fabrics: number;
  text: string;
}

const NINE_STARS = `name: Nine stars
units: in
fabrics:
  - { name: night, colour: "#26375d" }
  - { name: lanterns, colour: "#d59a36" }
  - { name: chalk, colour: "#f1e6d0" }

blocks:
  star:
    name: Star
    size: 8
    grid: |
      c   gv  -   c
      g>  m   -   g<
      |   |   -   |
      c   g   -   c
    cells:
      c: { square: chalk }
      g: { flying geese: [chalk, night] }
      m: { square: lanterns }

setting:
  rows: star
  fill: 3 x 3

borders:
  - { fabric: night, width: 3 }
binding: lanterns
`;

const LANTERN_LANE = `name: Lantern Lane
units: in
fabrics:
  - { name: night, colour: "#26375d" }
  - { name: lanterns, colour: "#d59a36" }
  - { name: madder, colour: "#ad4234" }
  - { name: chalk, colour: "#f1e6d0" }
  - { name: moss, colour: "#6f8a52" }

blocks:
  L:
    name: Lantern
    size: 8
    grid: |
      c   gv  -   c
      g>  m   -   g<
      |   |   -   |
      c   g   -   c
    cells:
      c: { square: chalk }
      g: { flying geese: [chalk, night] }
      m: { square: lanterns }
  N:
    name: Lane
    size: 8
    grid: |
      h   h>
      k<  kv
    cells:
      h: { half-square triangle: [chalk, madder], turn: 180 }
      k: { half-square triangle: [chalk, moss], turn: 180 }

setting:
  rows: |
    L N L N
    N L N L
    L N L N
    N L N L
    L N L N

borders:
  - { fabric: madder, width: 1 1/2 }
  - { fabric: night, width: 4 1/2 }
binding: madder
`;

const ROW_HOUSES = `name: Row houses
units: in
fabrics:
  - { name: madder, colour: "#ad4234" }
  - { name: lanterns, colour: "#d59a36" }
  - { name: moss, colour: "#6f8a52" }
  - { name: night, colour: "#26375d" }
  - { name: chalk, colour: "#f1e6d0" }

blocks:
  A:
    name: House
    size: 7 x 15
    cell: { rails: [madder, moss, lanterns, night] }
  B:
    name: Neighbour
    size: 7 x 15
    cell: { rails: [lanterns, madder, moss, madder] }

setting:
  rows: A B
  fill: 6 x 4
  sashing: { width: 2, fabric: chalk }

borders:
  - { fabric: chalk, width: 2 }
  - { fabric: moss, width: 4 }
binding: night
`;

/** Squared paper with three fabrics beside it, set three by three; nothing is drawn yet. */
export const EMPTY_SHEET = `name: My quilt
units: in
fabrics:
  - { name: night, colour: "#26375d" }
  - { name: lanterns, colour: "#d59a36" }
  - { name: chalk, colour: "#f1e6d0" }

blocks:
  A:
    size: 8
    grid: |
      . . . .
      . . . .
      . . . .
      . . . .
    cells: {}

setting:
  rows: A
  fill: 3 x 3
`;

export const STARTS: readonly Start[] = [
  { key: "nine-stars", name: "Nine stars", across: 30, down: 30, fabrics: 3, text: NINE_STARS },
  { key: "lantern-lane", name: "Lantern Lane", across: 44, down: 52, fabrics: 5, text: LANTERN_LANE },
  { key: "row-houses", name: "Row houses", across: 64, down: 78, fabrics: 5, text: ROW_HOUSES },
];
