import { MATTRESS_SIZES } from "../../../planning.ts";
import type { Picture } from "../../planner/picture.ts";
import { UNIT } from "../../planner/picture.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import { counts } from "../counts.ts";
import * as state from "../state.ts";
import { sizeSaid } from "../steps.tsx";
import { sized } from "./quilt-handles.tsx";

const SHOWN = ["crib", "twin", "full", "queen"];

/** Whole blocks that come nearest to covering a bed, with a drop of 10 in on three sides except a cradle's. */
function blocksFor(
  top: Picture,
  bed: { name: string; across: number; along: number },
): { across: number; down: number } {
  const drop = bed.name === "crib" ? 0 : 10 * 25.4;
  const now = counts();
  const each = { across: top.centre.across / now.across, down: top.centre.down / now.down };
  const edges = { across: top.across - top.centre.across, down: top.down - top.centre.down };
  const of = (length: number, edge: number, one: number) => Math.max(1, Math.round((length - edge) / one));
  return {
    across: of(bed.across / UNIT + 2 * drop, edges.across, each.across),
    down: of(bed.along / UNIT + drop, edges.down, each.down),
  };
}

/** The quilt among beds, drawn to one scale; a bed tapped gives the quilt the blocks to cover it. */
export function Beds({ top }: { top: Picture }) {
  const beds = MATTRESS_SIZES.filter(({ name, region }) => region === "US" && SHOWN.includes(name));
  const [w, h] = [top.across, top.down];
  const most = Math.max(h, w, ...beds.map(({ along }) => along / UNIT));
  const widest = Math.max(w, ...beds.map(({ across }) => across / UNIT));
  const per = most / 200;
  return (
    <>
      <svg
        class="beds"
        viewBox={`${-per} ${-per} ${widest + 2 * per} ${most + 2 * per}`}
        role="img"
        aria-label={words.sizeNow(sizeSaid(w * UNIT, h * UNIT), counts().across, counts().down)}
      >
        {beds.map(({ name, across, along }) => (
          <g key={name}>
            <rect class="bed" x="0" y="0" width={across / UNIT} height={along / UNIT} stroke-width={per} />
          </g>
        ))}
        <rect class="thisquilt" x="0" y="0" width={w} height={h} stroke-width={per * 2} />
        {beds.map(({ name, across, along }, i) => (
          <text
            key={name}
            x={across / UNIT - per * 3}
            // Beds of one length have their names one above the other: long ones would meet.
            y={along / UNIT - per * (beds[i + 1]?.along === along ? 15 : 4)}
            style={{ fontSize: `${per * 9}px` }}
            text-anchor="end"
          >
            {words.beds[name] ?? name}
          </text>
        ))}
      </svg>
      <p class="figure">{sizeSaid(w * UNIT, h * UNIT)}</p>
      <div class="row">
        {beds.map((bed) => (
          <button
            key={bed.name}
            type="button"
            class="act"
            aria-label={words.forBed(words.beds[bed.name] ?? bed.name)}
            onClick={() => {
              const { across, down } = blocksFor(top, bed);
              edit(
                (text) => sized(text, across, down),
                `${words.forBed(words.beds[bed.name] ?? bed.name)}: ${across} × ${down}.`,
              );
              state.placed.value = null;
            }}
          >
            {words.beds[bed.name] ?? bed.name}
          </button>
        ))}
      </div>
    </>
  );
}
