import type { ComponentChildren } from "preact";
import type { BlockModel, FabricModel, QuiltModel } from "../../edits/model.ts";
import { patchesOf, squeezedOf } from "../../edits/unit-patches.ts";
import { fabricPatterns } from "../../planning.ts";
import { type Corner, pathOf, UNIT, type Up, upIn, upPath } from "../planner/picture.ts";

type Mark = ReturnType<typeof fabricPatterns>[number]["nodes"][number];

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

/** Textures of the fabrics, as in the book: the second sign beside colour. `tile` is how wide one tile is drawn. */
export function Textures({
  prefix,
  fabrics,
  tile,
}: {
  prefix: string;
  fabrics: readonly FabricModel[];
  tile: number;
}) {
  return (
    <defs>
      {fabricPatterns(
        fabrics.map(({ name, colour }) => ({ name, colour })),
        1,
      ).map(({ id, size, nodes }) => (
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
  );
}

/** Every fabric but each tenth has marks over its colour. */
export const textureOf = (prefix: string, index: number): string | null =>
  index % 10 === 0 ? null : `url(#${prefix}fabric-${index + 1})`;

/** Shapes of one fabric: its colour, then its texture. */
export function Cloth({
  d,
  fabric,
  prefix,
  seam,
}: {
  d: string;
  fabric: FabricModel | null;
  prefix: string | null;
  seam: number;
}) {
  const texture = fabric === null || prefix === null ? null : textureOf(prefix, fabric.index);
  return (
    <>
      <path class="seam" d={d} fill={fabric?.colour ?? "var(--paper)"} stroke-width={seam} />
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
  fabric: FabricModel | null;
  d: string;
  ups: Up[];
}

/** Patches of a block by fabric, one shape each. */
function blockGroups(block: BlockModel, model: QuiltModel, colourway: string, turn: number): Group[] {
  const groups = new Map<string, Group>();
  for (const unit of block.units) {
    for (const patch of patchesOf(unit, block, model, colourway, turn) ?? squeezedOf(unit, block, model)) {
      const key = patch.fabric?.name ?? "";
      const group = groups.get(key) ?? { fabric: patch.fabric, d: "", ups: [] };
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
        {blockGroups(block, model, colourway, turn).map(({ fabric, d, ups }) => (
          <g key={fabric?.name}>
            <Cloth d={d} fabric={fabric} prefix={null} seam={seam} />
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
  const texture = textureOf(prefix, fabric.index);
  return (
    <svg class="swatch" width={size} height={size} viewBox="0 0 26 26" aria-hidden="true">
      <Textures
        prefix={prefix}
        fabrics={Array.from({ length: fabric.index + 1 }, (_, i) =>
          i === fabric.index ? fabric : { ...fabric, index: i },
        )}
        tile={8}
      />
      <rect class="hair" x=".5" y=".5" width="25" height="25" fill={fabric.colour} />
      {texture === null ? null : <rect x="1" y="1" width="24" height="24" fill={texture} />}
    </svg>
  );
}

/** A line of stitches between regions. */
export const Stitches = () => <div class="stitches" aria-hidden="true" />;

export function Leaf({
  title,
  children,
  name,
}: {
  title?: string;
  children: ComponentChildren;
  name?: string;
}) {
  return (
    <section class={`leaf ${name ?? ""}`} aria-label={title}>
      {children}
    </section>
  );
}
