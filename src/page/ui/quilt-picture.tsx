import { useMemo } from "preact/hooks";
import { fabricKey, type Plan } from "../../planning.ts";
import type { FabricModel, QuiltModel } from "../document/model.ts";
import { Cloth, pathOf, Textures, UNIT } from "./cloth.tsx";

export type Top = NonNullable<Plan["top"]>;
type Exact = Top["across"];

/** An exact length in millimetres, for drawing only. */
export function mm({ n, r, d, root }: Exact): number {
  return (n + r * Math.sqrt(root ?? 2)) / d / UNIT;
}

export const outline = (points: Top["patches"][number]["outline"]): [number, number][] =>
  points.map(({ x, y }) => [mm(x), mm(y)]);

interface Group {
  fabric: FabricModel | null;
  d: string;
}

function groupsOf(top: Top, fabrics: readonly FabricModel[]): Group[] {
  const byName = new Map(fabrics.map((fabric) => [fabricKey(fabric.name), fabric]));
  const groups = new Map<string, string[]>();
  for (const patch of top.patches) {
    const d = pathOf(outline(patch.outline), 1);
    const all = groups.get(patch.fabric);
    if (all === undefined) groups.set(patch.fabric, [d]);
    else all.push(d);
  }
  return [...groups].map(([name, all]) => ({ fabric: byName.get(fabricKey(name)) ?? null, d: all.join("") }));
}

/** The patches of a top, a shape for each fabric. */
export function Patches({
  top,
  model,
  prefix,
  tile,
}: {
  top: Top;
  model: QuiltModel;
  prefix: string;
  tile: number;
}) {
  const groups = useMemo(() => groupsOf(top, model.fabrics), [top, model.fabrics]);
  const seam = mm(top.across) / 700;
  return (
    <>
      <Textures prefix={prefix} fabrics={model.fabrics} tile={tile} />
      {groups.map(({ fabric, d }) => (
        <Cloth key={fabric?.name ?? "none"} d={d} fabric={fabric} prefix={prefix} seam={seam} />
      ))}
    </>
  );
}

/** The whole top as a picture; its size is what the style says. */
export function QuiltPicture({
  top,
  model,
  prefix,
  label,
  tile = 26,
}: {
  top: Top;
  model: QuiltModel;
  prefix: string;
  label: string;
  tile?: number;
}) {
  const [w, h] = [mm(top.across), mm(top.down)];
  return (
    <svg
      class="pic"
      viewBox={`0 0 ${w} ${h}`}
      role={label === "" ? "presentation" : "img"}
      aria-label={label === "" ? undefined : label}
    >
      <Patches top={top} model={model} prefix={prefix} tile={tile} />
      <rect class="hair" x="0" y="0" width={w} height={h} stroke-width={w / 200} />
    </svg>
  );
}
