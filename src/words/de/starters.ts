import type { Starter } from "../starter.ts";

const BLOCKS = `# Ein Quilt aus neun Sternblöcken mit einem Rand. Namen, Maße und Farben ändern; eine Zeile, die mit
# # beginnt, ist eine Notiz. Maße von Blöcken und Rändern sind fertige Maße; Nahtzugaben kommen von selbst dazu.
name: Mein Quilt
units: in
fabrics:
  - { name: nacht, colour: "#22345c" }
  - { name: gold,  colour: "#d9a441" }
  - { name: kreide, colour: "#f4efe2" }

blocks:
  stern:
    size: 8
    # Jeder Code ist eine Zelle des Blocks; - und | setzen eine Einheit nach rechts und nach unten fort.
    # Ein Zeichen nach einem Code dreht die Einheit: > ein Viertel, v halb, < drei Viertel, im Uhrzeigersinn.
    grid: |
      c   gv  -   c
      g>  m   -   g<
      |   |   -   |
      c   g   -   c
    cells:
      c: { square: kreide }
      g: { flying geese: [kreide, nacht] }   # die Gans, dann der Himmel: die Himmel sind die Zacken
      m: { square: gold }

setting:
  rows: stern        # wiederholt, bis drei Blöcke quer und drei hoch gefüllt sind
  fill: 3 x 3

borders:            # von innen nach außen
  - { fabric: nacht, width: 3 }
binding: gold
backing: { fabric: nacht, overhang: 4 }
`;

const ON_POINT = `# Blöcke, die auf der Spitze stehen, mit Randdreiecken ringsum.
name: Auf der Spitze
units: in
fabrics:
  - { name: pflaume,  colour: "#6b2d5c" }
  - { name: creme, colour: "#f3ead7" }
  - { name: blatt,  colour: "#6f8f5f" }

blocks:
  neun:  { size: 6, cell: { nine-patch: { corners: pflaume, sides: creme, centre: pflaume } } }
  einfach: { size: 6, cell: { square: blatt } }

setting:
  layout: on point
  # Jede zweite Reihe hat einen Block weniger und steht zwischen den anderen.
  rows: |
    neun   neun   neun
       einfach  einfach
    neun   neun   neun
       einfach  einfach
    neun   neun   neun
  triangles: blatt

borders:
  - { fabric: pflaume, width: 4, corners: mitred }
binding: pflaume
`;

const SAMPLER = `# Ein Sampler, der das meiste zeigt, was eine Quiltdatei sagen kann. Was nicht gebraucht wird, weglassen.
name: Sampler
units: in
ruler: 1/8 in
seam: 1/4
rounding: exact          # oder trade: die üblichen Zugaben (7/8, 1 1/4)
prints: upright          # oder with block, with unit: wie Drucke mit Richtung liegen

all-fabrics: { width: 43 in, selvage: 1/2 in }
fabrics:
  - { name: indigo, colour: "#2b3a67" }
  - { name: vögel,  colour: "#b5523b", print: one-way }   # seine Vögel stehen aufrecht
  - { name: weizen,  colour: "#e3c878" }
  - { name: leinen,  colour: "#efe7d6" }
  - { name: moos,   colour: "#6d7f4f" }

methods:                 # wie Einheiten genäht werden, wenn eine Zelle nichts anderes sagt
  half-square triangle: eight at a time
  flying geese: four at a time

blocks:
  S:
    name: Stern
    size: 8
    grid: |
      c   gv  -   c
      g>  h   h>  g<
      |   h<  hv  |
      c   g   -   c
    cells:
      c: { square: grund }
      g: { flying geese: [grund, zacken] }
      h: { half-square triangle: [grund, herz] }
    roles: { grund: leinen, zacken: indigo, herz: weizen }
  C:
    name: Schachbrett
    size: 8
    grid: |
      p  q
      q  p
    cells:
      p: { four-patch: [moos, leinen] }
      q: { square: leinen }
  B:
    name: Vögel
    columns: [1, 6, 1]   # fertige Größen ungleicher Spalten; Zeilen ebenso
    grid: |
      k  s  k
      s> m  s>
      k  s  k
    cells:
      k: { square: moos }
      s: { rectangle: weizen }
      m: { square: vögel }
  ecke: { size: 2, cell: { snowball: { ball: weizen, corners: indigo }, corner: 1/2 } }
  zahn:
    size: 2
    cell: { half-square triangle: [indigo, leinen] }

colourways:              # andere Farben für einen Block: S/abend
  abend: { zacken: moos, herz: vögel }

setting:
  rows: |
    S       C  S/abend
    C       B  C>
    S/abend  C  S
  sashing: { width: 2, fabric: leinen, cornerstones: { block: ecke }, ring: true }

borders:
  - { name: erster Rand, fabric: weizen, width: 1 }
  - { name: Zähne, block: zahn, width: 2, cornerstones: leinen }
  - { name: äußerer Rand, fabric: vögel, width: 4, corners: tops first }

binding: { fabric: indigo, width: 2 1/2, join: diagonal }
backing: { fabric: moos, overhang: 4, seams: either }
wadding: { overhang: 4 }
`;

const METRIC = `# Ein Quilt in Zentimetern: Nahtzugabe 0,75 cm, Striche des Lineals alle Viertelzentimeter.
name: Quilt in Zentimetern
units: cm
ruler: 0.25 cm
seam: 0.75
fabrics:
  - { name: petrol, colour: "#1f5f6b" }
  - { name: sand,   colour: "#e6d3ad" }
  - { name: rost,   colour: "#a8502f" }

blocks:
  wirbel:
    size: 20
    grid: |
      h> hv
      h  h<
    cells:
      h: { half-square triangle: [petrol, sand] }
  einfach: { size: 20, cell: { square: sand } }

setting:
  rows: |
    wirbel einfach
    einfach wirbel
  fill: 5 x 7
borders:
  - { fabric: rost, width: 10 }
binding: { fabric: petrol, width: 6.5 }
backing: rost
`;

const FOUNDATION = `# Gänse, die im Kreis durch ihre Blöcke fliegen, auf einer Rasterunterlage genäht: Ihre Linien sind die Nähte.
name: Gänse im Raster
units: in
fabrics:
  - { name: abend,  colour: "#2f4858" }
  - { name: stroh, colour: "#e8c468" }
  - { name: nebel,  colour: "#e9eef0" }
  # Die Unterlage wird wie ein Stoff gekauft und geschnitten. In Stücken verkauft: yardage: no, ready-cut: [44 x 36 in]
  - { name: raster, colour: "#f6f3ea", width: 44 in, selvage: 0, sold: by 1/4 yd }

foundation:
  fabric: raster
  grid: 1 in             # Seite eines gedruckten Kästchens: Blöcke und Einheiten müssen ganze Kästchen ergeben
  per: motif             # oder unit, block: was auf ein Stück der Unterlage kommt
  allowance: 1           # Kästchen außerhalb der äußersten Nahtlinie
  ease: 1/4              # um so viel werden Patches größer geschnitten; 0 für genau
  hold: fusible          # aufbügelbar; oder sew-in: zum Einnähen
  after: left in         # bleibt darin; oder torn away: wird abgerissen, wenn sie eingenäht ist
  # Ein anderer Weg: fertige Teile Kante an Kante, Linien gefaltet und genäht, Kästchen so breit wie die Nahtzugabe:
  # way: folded, grid: 1/4 in, per: block oder row

blocks:
  runde:
    size: 8
    # Ein Motiv ist eine Gans mit einem Balken, 4 x 4 Kästchen; vier davon laufen um den Block.
    grid: |
      b> g> b  -
      |  |  gv -
      g  -  g< b>
      b  -  |  |
    cells:
      g: { flying geese: [stroh, nebel] }
      b: { rectangle: abend }

setting:
  rows: runde
  fill: 3 x 3
borders:
  - { fabric: abend, width: 3, over-long: 2 }   # zu lang geschnitten, nach dem Nähen gekürzt
binding: stroh
`;

const CUT_LIST = `# Maße zum Zuschneiden, ohne Entwurf: Nahtzugabe inbegriffen, quer zum Stoff zuerst.
name: Meine Zuschnittliste
units: in
ruler: 1/8 in
all-fabrics: { width: 43 in, selvage: 1/2 in, sold: by 1/8 yd }
fabrics:
  - name: Nacht
    colour: "#22345c"
    pieces:
      - rand 4 1/2 x WOF, 6        # WOF: die ganze Stoffbreite
      - A 2 1/2 x 6 1/2, 48
      - B 2 1/2 square, 72
  - name: Möwen
    colour: "#8fb8c9"
    print: one-way                   # Teile eines Drucks mit Richtung werden nicht gedreht
    pieces:
      - C 6 1/2 x 8 1/2, 12
`;

const TEMPLATES = `# Boote, deren Patches nach Schablonen geschnitten werden: Das Buch druckt sie in Originalgröße.
name: Regatta
units: in
fabrics:
  - { name: himmel,    colour: "#a9cbe0", print: one-way along }   # oben bleibt oben
  - { name: segeltuch, colour: "#f2ead8" }
  - { name: rot,    colour: "#b5382c" }
  - { name: holz, colour: "#7a5230" }
  - { name: meer,    colour: "#1f4e6b" }

blocks:
  boot:
    size: 8
    cell:
      # Auf kariertem Papier gezeichnet, 8 mal 8: jeder Patch mit seinen Ecken, quer von links, dann nach unten.
      # Ohne drawn-on sind die Ecken fertige Längen.
      drawn-on: 8 x 8
      drawn patches: { himmel: himmel, fock: segeltuch, groß: rot, rumpf: holz, meer: meer }
      patches:
        - { part: himmel,  corners: [[0, 0], [4, 0], [1, 5], [0, 5]] }
        - { part: fock,  corners: [[4, 0], [4, 5], [1, 5]] }
        - { part: groß, corners: [[4, 0], [7, 5], [4, 5]] }
        - { part: himmel,  corners: [[4, 0], [8, 0], [8, 5], [7, 5]] }
        - { part: meer,  corners: [[0, 5], [1, 5], [2, 7], [0, 7]] }
        - { part: rumpf, corners: [[1, 5], [7, 5], [6, 7], [2, 7]] }
        - { part: meer,  corners: [[7, 5], [8, 5], [8, 7], [6, 7]] }
        - { part: meer,  corners: [[0, 7], [8, 7], [8, 8], [0, 8]] }
  einfach: { size: 8, cell: { square: meer } }

setting:
  rows: |
    boot  einfach boot
    einfach boot  einfach
    boot  einfach boot

borders:
  - { fabric: meer, width: 2 }
binding: rot
`;

/** Every starter, the simplest first. */
export const starters: readonly Starter[] = [
  { name: "blocks", summary: "neun Sternblöcke mit einem Rand: eine gute erste Datei", text: BLOCKS },
  { name: "on-point", summary: "Blöcke auf der Spitze mit Randdreiecken", text: ON_POINT },
  {
    name: "sampler",
    summary:
      "drei Blöcke, Farbstellungen, Zwischenstreifen, genähter Rand: das meiste, was eine Datei sagen kann",
    text: SAMPLER,
  },
  { name: "metric", summary: "ein Quilt in Zentimetern", text: METRIC },
  {
    name: "foundation",
    summary: "Gänse auf einer Rasterunterlage, Patch für Patch auf ihren Linien genäht",
    text: FOUNDATION,
  },
  { name: "templates", summary: "Patches in jeder Form, nach Schablonen geschnitten", text: TEMPLATES },
  { name: "cut-list", summary: "Maße zum Zuschneiden, ohne Entwurf", text: CUT_LIST },
];
