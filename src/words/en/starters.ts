import type { Starter } from "../starter.ts";

const BLOCKS = `# A quilt of nine star blocks with a border. Change names, sizes and colours; a line that
# starts with # is a note. Sizes of blocks and borders are finished sizes; seams are added for you.
name: My quilt
units: in
fabrics:
  - { name: night, colour: "#22345c" }
  - { name: gold,  colour: "#d9a441" }
  - { name: chalk, colour: "#f4efe2" }

blocks:
  star:
    size: 8
    # Each code is a cell of the block; - and | carry a unit on to the right and down.
    # A mark after a code turns the unit: > a quarter, v a half, < three quarters, clockwise.
    grid: |
      c   gv  -   c
      g>  m   -   g<
      |   |   -   |
      c   g   -   c
    cells:
      c: { square: chalk }
      g: { flying geese: [chalk, night] }   # the goose, then the sky: its skies are the points
      m: { square: gold }

setting:
  rows: star        # repeated to fill three blocks across, three down
  fill: 3 x 3

borders:            # from the inside out
  - { fabric: night, width: 3 }
binding: gold
backing: { fabric: night, overhang: 4 }
`;

const ON_POINT = `# Blocks standing on their points, with setting triangles round the edge.
name: On point
units: in
fabrics:
  - { name: plum,  colour: "#6b2d5c" }
  - { name: cream, colour: "#f3ead7" }
  - { name: leaf,  colour: "#6f8f5f" }

blocks:
  nine:  { size: 6, cell: { nine-patch: { corners: plum, sides: cream, centre: plum } } }
  plain: { size: 6, cell: { square: leaf } }

setting:
  layout: on point
  # Every second row has one block fewer and stands between the others.
  rows: |
    nine   nine   nine
       plain  plain
    nine   nine   nine
       plain  plain
    nine   nine   nine
  triangles: leaf

borders:
  - { fabric: plum, width: 4, corners: mitred }
binding: plum
`;

const SAMPLER = `# A sampler that shows most of what a quilt file can say. Leave out what you do not need.
name: Sampler
units: in
ruler: 1/8 in
seam: 1/4
rounding: exact          # or trade: the constants makers know (7/8, 1 1/4)
prints: upright          # or with block, with unit: how directional prints lie

all-fabrics: { width: 43 in, selvage: 1/2 in }
fabrics:
  - { name: indigo, colour: "#2b3a67" }
  - { name: birds,  colour: "#b5523b", print: one-way }   # its birds have heads up
  - { name: wheat,  colour: "#e3c878" }
  - { name: linen,  colour: "#efe7d6" }
  - { name: moss,   colour: "#6d7f4f" }

methods:                 # how units are made, unless a cell says otherwise
  half-square triangle: eight at a time
  flying geese: four at a time

blocks:
  S:
    name: Star
    size: 8
    grid: |
      c   gv  -   c
      g>  h   h>  g<
      |   h<  hv  |
      c   g   -   c
    cells:
      c: { square: ground }
      g: { flying geese: [ground, point] }
      h: { half-square triangle: [ground, heart] }
    roles: { ground: linen, point: indigo, heart: wheat }
  C:
    name: Checker
    size: 8
    grid: |
      p  q
      q  p
    cells:
      p: { four-patch: [moss, linen] }
      q: { square: linen }
  B:
    name: Birds
    columns: [1, 6, 1]   # finished sizes of uneven columns; lines alike
    grid: |
      k  s  k
      s> m  s>
      k  s  k
    cells:
      k: { square: moss }
      s: { rectangle: wheat }
      m: { square: birds }
  corner: { size: 2, cell: { snowball: { ball: wheat, corners: indigo }, corner: 1/2 } }
  tooth:
    size: 2
    cell: { half-square triangle: [indigo, linen] }

colourways:              # other colours for a block: S/dusk
  dusk: { point: moss, heart: birds }

setting:
  rows: |
    S       C  S/dusk
    C       B  C>
    S/dusk  C  S
  sashing: { width: 2, fabric: linen, cornerstones: { block: corner }, ring: true }

borders:
  - { name: first border, fabric: wheat, width: 1 }
  - { name: teeth, block: tooth, width: 2, cornerstones: linen }
  - { name: outer border, fabric: birds, width: 4, corners: tops first }

binding: { fabric: indigo, width: 2 1/2, join: diagonal }
backing: { fabric: moss, overhang: 4, seams: either }
wadding: { overhang: 4 }
`;

const METRIC = `# A quilt in centimetres: seam 0.75 cm, ruler marks every quarter of a centimetre.
name: Metric quilt
units: cm
ruler: 0.25 cm
seam: 0.75
fabrics:
  - { name: petrol, colour: "#1f5f6b" }
  - { name: sand,   colour: "#e6d3ad" }
  - { name: rust,   colour: "#a8502f" }

blocks:
  whirl:
    size: 20
    grid: |
      h> hv
      h  h<
    cells:
      h: { half-square triangle: [petrol, sand] }
  plain: { size: 20, cell: { square: sand } }

setting:
  rows: |
    whirl plain
    plain whirl
  fill: 5 x 7
borders:
  - { fabric: rust, width: 10 }
binding: { fabric: petrol, width: 6.5 }
backing: rust
`;

const FOUNDATION = `# Geese that run round their blocks, pieced on foundation printed with squares: its lines are the seams.
name: Geese on a grid
units: in
fabrics:
  - { name: dusk,  colour: "#2f4858" }
  - { name: straw, colour: "#e8c468" }
  - { name: mist,  colour: "#e9eef0" }
  # The foundation is bought and cut like a fabric. Sold in panels: yardage: no, ready-cut: [44 x 36 in]
  - { name: gridded web, colour: "#f6f3ea", width: 44 in, selvage: 0, sold: by 1/4 yd }

foundation:
  fabric: gridded web
  grid: 1 in             # side of a printed square: blocks and units must come to whole squares
  per: motif             # or unit, block: what one piece of foundation carries
  allowance: 1           # squares beyond the outermost seam line
  ease: 1/4              # patches are cut larger by this; 0 for exact
  hold: fusible          # or sew-in
  after: left in         # or torn away, when it is sew-in
  # Another way: finished parts laid edge to edge, lines folded and sewn, with squares as wide as the seam:
  # way: folded, grid: 1/4 in, per: block or row

blocks:
  round:
    size: 8
    # A motif is a goose and a bar, 4 x 4 squares; four of them run round the block.
    grid: |
      b> g> b  -
      |  |  gv -
      g  -  g< b>
      b  -  |  |
    cells:
      g: { flying geese: [straw, mist] }
      b: { rectangle: dusk }

setting:
  rows: round
  fill: 3 x 3
borders:
  - { fabric: dusk, width: 3, over-long: 2 }   # cut long, trimmed once it is sewn
binding: straw
`;

const CUT_LIST = `# Sizes to cut, with no design: seam allowance included, across the fabric first.
name: My cut list
units: in
ruler: 1/8 in
all-fabrics: { width: 43 in, selvage: 1/2 in, sold: by 1/8 yd }
fabrics:
  - name: Night
    colour: "#22345c"
    pieces:
      - border 4 1/2 x WOF, 6        # WOF: the whole width of fabric
      - A 2 1/2 x 6 1/2, 48
      - B 2 1/2 square, 72
  - name: Gulls
    colour: "#8fb8c9"
    print: one-way                   # pieces of a print with an up are not turned
    pieces:
      - C 6 1/2 x 8 1/2, 12
`;

const TEMPLATES = `# Boats whose patches are cut with templates: the book prints them at full size.
name: Regatta
units: in
fabrics:
  - { name: sky,    colour: "#a9cbe0", print: one-way along }   # its up stays up
  - { name: canvas, colour: "#f2ead8" }
  - { name: red,    colour: "#b5382c" }
  - { name: timber, colour: "#7a5230" }
  - { name: sea,    colour: "#1f4e6b" }

blocks:
  boat:
    size: 8
    cell:
      # Drawn on squared paper, 8 by 8: each patch by its corners, across from the left, then down.
      # Without drawn-on the corners are finished lengths.
      drawn-on: 8 x 8
      drawn patches: { sky: sky, jib: canvas, main: red, hull: timber, sea: sea }
      patches:
        - { part: sky,  corners: [[0, 0], [4, 0], [1, 5], [0, 5]] }
        - { part: jib,  corners: [[4, 0], [4, 5], [1, 5]] }
        - { part: main, corners: [[4, 0], [7, 5], [4, 5]] }
        - { part: sky,  corners: [[4, 0], [8, 0], [8, 5], [7, 5]] }
        - { part: sea,  corners: [[0, 5], [1, 5], [2, 7], [0, 7]] }
        - { part: hull, corners: [[1, 5], [7, 5], [6, 7], [2, 7]] }
        - { part: sea,  corners: [[7, 5], [8, 5], [8, 7], [6, 7]] }
        - { part: sea,  corners: [[0, 7], [8, 7], [8, 8], [0, 8]] }
  plain: { size: 8, cell: { square: sea } }

setting:
  rows: |
    boat  plain boat
    plain boat  plain
    boat  plain boat

borders:
  - { fabric: sea, width: 2 }
binding: red
`;

/** Every starter, the simplest first. */
export const starters: readonly Starter[] = [
  { name: "blocks", summary: "nine star blocks with a border: a good first file", text: BLOCKS },
  { name: "on-point", summary: "blocks on their points with setting triangles", text: ON_POINT },
  {
    name: "sampler",
    summary: "three blocks, colourways, sashing, pieced border: most of what a file can say",
    text: SAMPLER,
  },
  { name: "metric", summary: "a quilt in centimetres", text: METRIC },
  {
    name: "foundation",
    summary: "geese on a gridded foundation, pieced patch by patch on its lines",
    text: FOUNDATION,
  },
  { name: "templates", summary: "patches of any shape, cut with templates", text: TEMPLATES },
  { name: "cut-list", summary: "sizes to cut, with no design", text: CUT_LIST },
];
