import { useRef } from "preact/hooks";
import type { MatFabric } from "../../planner/mat.ts";
import type { MatStrip } from "../../planner/mat-parts.ts";
import { UNIT } from "../../planner/picture.ts";
import { words } from "../../words/index.ts";
import { photoFill } from "../fabric/photo-fills.tsx";
import { fabricNamed, photoNamed } from "../pile.tsx";
import * as state from "../state.ts";
import { lengthSaid } from "../steps.tsx";
import { cutOf } from "./at-the-mat.ts";
import { Letter, Piece } from "./mat-drawing.tsx";
import { measuresWithRoom } from "./mat-room.ts";
import { useWideOnScreen } from "./wide-on-screen.ts";

/** Most measures written below a strip: more would lie on one another. */
const MOST_MEASURES = 9;
/** Height of a drawn strip at most, as a share of its full length. */
const HIGHEST = 0.3;
/** Their smallest size in points of the screen, and the room one takes in its own size. */
const MEASURE_ON_SCREEN = 11;
const MEASURE_WIDE = 3;

/** The strip alone, lying level, with what the ruler is laid to from its end. */
export function StripAlone({ strip, fabric }: { strip: MatStrip; fabric: MatFabric }) {
  const level = !strip.lengthwise;
  const [run, high] = level ? [strip.across, strip.along] : [strip.along, strip.across];
  const lying = strip.parts.map((part) =>
    level
      ? { ...part, x: part.x - strip.x, y: part.y - strip.y, d: "" }
      : {
          ...part,
          x: part.y - strip.y,
          y: part.x - strip.x,
          across: part.along,
          along: part.across,
          d: "",
        },
  );
  const ends = [...new Set(lying.flatMap((part) => (part.bag === null ? [] : [part.x + part.across])))].sort(
    (a, b) => a - b,
  );
  const drawn = useRef<SVGSVGElement>(null);
  const wide = useWideOnScreen(drawn);
  // A short piece of cloth is drawn no higher than what is said of it leaves room for.
  const share = Math.round(100 * Math.min(1, Math.max(0.3, (HIGHEST * run) / high)));
  const k = run / 100;
  const point = wide === 0 ? 0 : (run + 6 * k) / wide;
  const size = Math.max(2.7 * k, MEASURE_ON_SCREEN * point);
  const few = ends.length > MOST_MEASURES ? [ends[0]!, ends[1]!, ends.at(-1)!] : ends;
  const told = measuresWithRoom(few, size * MEASURE_WIDE);
  const known = fabricNamed(fabric.name);
  // A lengthwise strip lies level here: so does its print.
  const photo = known === null ? null : photoFill("", known, 90);
  return (
    <svg
      ref={drawn}
      class="stripalone"
      style={{ ...(photo === null || level ? {} : { "--fabric": photo }), width: `${share}%` }}
      viewBox={`${-3 * k} 0 ${run + 6 * k} ${high + 2.2 * size + 2 * k}`}
      aria-hidden="true"
    >
      {lying.map((part, i) => (
        <g key={i} onClick={() => (state.bagInHand.value = part.bag)}>
          <Piece part={part} fabric={fabric} held={part.bag !== null && part.bag === state.bagInHand.value} />
          <Letter part={part} fabric={fabric} point={point} />
        </g>
      ))}
      {told.map((end) => (
        <text key={end} class="measure" x={end} y={high + 1.9 * size} font-size={size}>
          {lengthSaid(end * UNIT).replace(/ .*$/, "")}
        </text>
      ))}
    </svg>
  );
}

/** Where the pieces of a bag lie in the quilt. */
function Place({ fabric, bag }: { fabric: MatFabric; bag: number }) {
  const { top } = state.laid.value;
  const own = fabric.bags[bag];
  if (top === null || own === undefined || own.place === "") return null;
  const line = top.across / 160;
  return (
    <svg
      class="pic bagplace"
      viewBox={`0 0 ${top.across} ${top.down}`}
      role="img"
      aria-label={words.bagPlace(own.letter)}
    >
      <rect class="ground" x="0" y="0" width={top.across} height={top.down} />
      {top.groups.map(({ fabric: name, up, d }) => (
        <path key={`${name} ${up}`} class="faint" d={d} stroke-width={line / 3} />
      ))}
      <path class="here" d={own.place} fill={photoNamed(fabric.name) ?? fabric.colour} stroke-width={line} />
    </svg>
  );
}

/** A bag: what goes into it, what for, and where it comes to lie. */
export function BagInHand({ fabric }: { fabric: MatFabric }) {
  const bag = state.bagInHand.value;
  const own = bag === null ? undefined : fabric.bags[bag];
  if (bag === null || own === undefined) return null;
  return (
    <div class="baginhand" aria-live="polite">
      <div>
        <h3>
          <span class="bag">{own.letter}</span> {words.bagTitle(own.letter)}
        </h3>
        <p>{words.bagFacts(own.count, own.size)}</p>
        {own.uses.length === 0 ? null : <p class="quiet">{own.uses.join(", ")}</p>}
        <p class="quiet">{words.bagCut(cutOf(fabric, bag), own.count)}</p>
      </div>
      <Place fabric={fabric} bag={bag} />
    </div>
  );
}
