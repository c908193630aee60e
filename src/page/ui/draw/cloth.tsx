import type { BlockModel, FabricModel, QuiltModel } from "../../../edits/model.ts";
import { patchesOf, squeezedOf } from "../../../edits/unit-patches.ts";
import { fabricTiles } from "../../../planning.ts";
import { type Corner, pathOf, UNIT, type Up, upIn, upPath } from "../../planner/picture.ts";
import { PhotoFills, photoFill } from "../fabric/photo-fills.tsx";
import { textureNumber } from "../fabric/texture-numbers.ts";

type Mark = ReturnType<typeof fabricTiles>[number]["nodes"][number];

function mark(node: Mark, key: number) {
  if (node.kind === "circle")
    return (
      <circle
        key={key}
        cx={node.x}
        cy={node.y}
        r={node.radius}
        fill={node.paint.fill ?? "none"}
        stroke={node.paint.stroke}
        stroke-width={node.paint.strokeWidth}
      />
    );
  if (node.kind === "line")
    return (
      <line
        key={key}
        x1={node.x1}
        y1={node.y1}
        x2={node.x2}
        y2={node.y2}
        stroke={node.paint.stroke}
        stroke-width={node.paint.strokeWidth}
      />
    );
  return null;
}

/** Millimetres of cloth to one unit of a small picture that is no drawing of the quilt: a dot, a fold, a swatch. */
const SMALL = 0.4;

/**
 * What the fabrics of a drawing are filled with: their pictures, a millimetre of cloth `mm` units long, and their
 * textures as in the book, the second sign beside colour. `tile` is how wide one tile of a texture is drawn.
 */
export function Textures({
  prefix,
  fabrics,
  tile,
  mm = SMALL,
}: {
  prefix: string;
  fabrics: readonly FabricModel[];
  tile: number;
  mm?: number;
}) {
  const slots: { name: string; colour: string }[] = [];
  for (const { name, colour } of fabrics) slots[textureNumber(name)] = { name, colour };
  const taken = Array.from(slots, (slot) => slot ?? { name: "", colour: "" });
  return (
    <>
      <PhotoFills prefix={prefix} mm={mm} />
      <defs>
        {fabricTiles(taken).map(({ id, size, nodes }) => (
          <pattern
            key={id}
            id={`${prefix}${id}`}
            patternUnits="userSpaceOnUse"
            width={size}
            height={size}
            patternTransform={`scale(${tile / size})`}
          >
            {nodes.map(mark)}
          </pattern>
        ))}
      </defs>
    </>
  );
}

/**
 * What a fabric is drawn with: its picture alone, or its colour and the marks over it that every fabric but each tenth has.
 * Without a prefix there are no marks; `photos` is the prefix of the pictures where they have one of their own.
 */
export function paintsOf(
  prefix: string | null,
  fabric: FabricModel | null,
  up: number | null = null,
  photos = prefix ?? "",
): { ground: string; texture: string | null } {
  if (fabric === null) return { ground: "var(--paper)", texture: null };
  const photo = photoFill(photos, fabric, up);
  if (photo !== null) return { ground: photo, texture: null };
  const number = textureNumber(fabric.name);
  const plain = prefix === null || number % 10 === 0;
  return { ground: fabric.colour, texture: plain ? null : `url(#${prefix}fabric-${number + 1})` };
}

/** Shapes of one fabric: its picture, or its colour, then its texture. `up` is where its print's up is to point. */
export function Cloth({
  d,
  fabric,
  prefix,
  seam,
  up = null,
  photos,
}: {
  d: string;
  fabric: FabricModel | null;
  prefix: string | null;
  seam: number;
  up?: number | null;
  photos?: string;
}) {
  const { ground, texture } = paintsOf(prefix, fabric, up, photos);
  return (
    <>
      <path class="seam" d={d} fill={ground} stroke-width={seam} />
      {texture === null ? null : <path d={d} fill={texture} />}
    </>
  );
}

/** Arrows to where the prints of one fabric read, dark within a pale halo so that they show on any cloth. */
export function Ups({ all, fabric }: { all: readonly Up[]; fabric: FabricModel | null }) {
  if (all.length === 0) return null;
  const d = all.map((one) => upPath(one, fabric?.print.startsWith("two-way") === true)).join("");
  return (
    <g aria-hidden="true" class="ups">
      <path class="uphalo" d={d} />
      <path class="upline" d={d} />
    </g>
  );
}

interface Group {
  key: string;
  fabric: FabricModel | null;
  up: number | null;
  d: string;
  ups: Up[];
}

/** Patches of a block by fabric and by where its print's up points, one shape each. */
function blockGroups(block: BlockModel, model: QuiltModel, colourway: string, turn: number): Group[] {
  const groups = new Map<string, Group>();
  for (const unit of block.units) {
    for (const patch of patchesOf(unit, block, model, colourway, turn) ?? squeezedOf(unit, block, model)) {
      const { fabric, up } = patch;
      const key = `${fabric?.name ?? ""} ${up ?? ""}`;
      const group = groups.get(key) ?? { key, fabric, up, d: "", ups: [] };
      const corners = patch.corners.map(([x, y]): Corner => [x / UNIT, y / UNIT]);
      group.d += pathOf(corners);
      if (patch.up !== null) group.ups.push(upIn(corners, patch.up));
      groups.set(key, group);
    }
  }
  return [...groups.values()];
}

export function blockSize(block: BlockModel): [number, number] {
  return [(block.xs.at(-1) ?? 1) / UNIT, (block.ys.at(-1) ?? 1) / UNIT];
}

/** A block by itself, turned; its size is what the style says. */
export function BlockPicture({
  block,
  model,
  turn = 0,
  colourway = "",
  label,
}: {
  block: BlockModel;
  model: QuiltModel;
  turn?: number;
  colourway?: string;
  label?: string;
}) {
  const [w, h] = blockSize(block);
  const seam = Math.max(w, h) / 130;
  const lies = turn % 180 === 0;
  const view = lies ? `0 0 ${w} ${h}` : `${(w - h) / 2} ${(h - w) / 2} ${h} ${w}`;
  return (
    <svg
      class="pic"
      viewBox={view}
      role={label === undefined ? undefined : "img"}
      aria-label={label}
      aria-hidden={label === undefined}
    >
      <g transform={`rotate(${turn} ${w / 2} ${h / 2})`}>
        <rect class="sheet" x="0" y="0" width={w} height={h} stroke-width={seam} />
        {blockGroups(block, model, colourway, turn).map(({ key, fabric, up, d, ups }) => (
          <g key={key}>
            <Cloth d={d} fabric={fabric} prefix={null} seam={seam} up={up} />
            <Ups all={ups} fabric={fabric} />
          </g>
        ))}
      </g>
    </svg>
  );
}

/** A square of a fabric. */
export function Swatch({ fabric, size = 26 }: { fabric: FabricModel; size?: number }) {
  const prefix = `sw${fabric.index}-`;
  const { ground, texture } = paintsOf(prefix, fabric);
  return (
    <svg class="swatch" width={size} height={size} viewBox="0 0 26 26" aria-hidden="true">
      <Textures prefix={prefix} fabrics={[fabric]} tile={8} />
      <rect class="hair" x=".5" y=".5" width="25" height="25" fill={ground} />
      {texture === null ? null : <rect x="1" y="1" width="24" height="24" fill={texture} />}
    </svg>
  );
}

/** A line of stitches between regions. */
export const Stitches = () => <div class="stitches" aria-hidden="true" />;
