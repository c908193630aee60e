import type { QuiltModel } from "../../edits/model.ts";
import { fabricKey } from "../../planning.ts";
import type { Picture } from "../planner/picture.ts";
import { Cloth, Textures, Ups } from "./draw/cloth.tsx";

/** The patches of a top, a shape for each fabric, in the colours the file has now. */
export function Patches({
  top,
  model,
  prefix,
  tile,
}: {
  top: Picture;
  model: QuiltModel;
  prefix: string;
  tile: number;
}) {
  const byName = new Map(model.fabrics.map((fabric) => [fabricKey(fabric.name), fabric]));
  return (
    <>
      <Textures prefix={prefix} fabrics={model.fabrics} tile={tile} mm={1} />
      {top.groups.map(({ fabric, up, d, ups }) => (
        <g key={`${fabric} ${up}`}>
          <Cloth
            d={d}
            fabric={byName.get(fabricKey(fabric)) ?? null}
            prefix={prefix}
            seam={top.across / 700}
            up={up}
          />
          <Ups all={ups} fabric={byName.get(fabricKey(fabric)) ?? null} />
        </g>
      ))}
    </>
  );
}

/** The whole top as a picture; its size is what the style says. Without a label it only adorns. */
export function QuiltPicture({
  top,
  model,
  prefix,
  label,
  tile = 26,
}: {
  top: Picture;
  model: QuiltModel;
  prefix: string;
  label: string;
  tile?: number;
}) {
  const { across, down } = top;
  return (
    <svg
      class="pic"
      viewBox={`0 0 ${across} ${down}`}
      role={label === "" ? "presentation" : "img"}
      aria-label={label === "" ? undefined : label}
    >
      <Patches top={top} model={model} prefix={prefix} tile={tile} />
      <rect class="hair" x="0" y="0" width={across} height={down} stroke-width={across / 200} />
    </svg>
  );
}
