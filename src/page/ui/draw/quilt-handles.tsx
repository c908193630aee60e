import { signal } from "@preact/signals";
import { ticksOf } from "../../../edits/model.ts";
import { sizeQuilt, widenBorder } from "../../../edits/quilt-edits.ts";
import { widenPieced } from "../../../edits/ring-edits.ts";
import { type Picture, type RingPicture, UNIT } from "../../planner/picture.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import { counts, onEnd } from "../counts.ts";
import * as state from "../state.ts";
import { lengthNumber, lengthSaid, rulerMark } from "../steps.tsx";

/** What a drag would make of the quilt's size or a border's width, shown while the pointer is down. */
const corner = signal<{ across: number; down: number } | null>(null);
const widening = signal<{ index: number; marks: number } | null>(null);
let start: { x: number; y: number } | null = null;

export interface Point {
  x: number;
  y: number;
}

/** Where a pointer is in a drawing, however the drawing is fitted into its place. */
export function pointIn(svg: SVGSVGElement | null, { clientX, clientY }: PointerEvent): Point {
  const matrix = svg?.getScreenCTM();
  if (matrix == null) return { x: 0, y: 0 };
  const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(matrix.inverse());
  return { x, y };
}

/** A finger that drags a handle does not drag the page along. */
function keepPage(event: TouchEvent): void {
  event.preventDefault();
}

/** The quilt in so many blocks as they lie in it. */
export const sized = (text: string, across: number, down: number): string =>
  onEnd() ? sizeQuilt(text, down, across) : sizeQuilt(text, across, down);

export function sizeTo(across: number, down: number): void {
  const [wide, high] = [Math.max(1, across), Math.max(1, down)];
  edit(
    (text) => sized(text, wide, high),
    () => `${wide} ${words.across}, ${high} ${words.down}.`,
  );
}

/** Whole blocks that come nearest to a corner dragged to a point. */
function blocksTo(top: Picture, { x, y }: Point): { across: number; down: number } {
  const now = counts();
  const of = (to: number, whole: number, centre: number, count: number) =>
    Math.min(100, Math.max(1, Math.round((to - (whole - centre)) / (centre / count))));
  return {
    across: of(x, top.across, top.centre.across, now.across),
    down: of(y, top.down, top.centre.down, now.down),
  };
}

interface Count {
  across: number;
  down: number;
}

/** How large the quilt would be were the corner let go. */
function SizeDrawn({ top, per, to }: { top: Picture; per: number; to: Count }) {
  const { across: w, down: h } = top;
  const now = counts();
  const pitch = { x: top.centre.across / now.across, y: top.centre.down / now.down };
  return (
    <g aria-hidden="true">
      <rect
        class="next"
        stroke-width={per * 2}
        x="0"
        y="0"
        width={w + (to.across - now.across) * pitch.x}
        height={h + (to.down - now.down) * pitch.y}
      />
      <text class="ru big" font-size={per * 14} x={w / 2} y={h / 2} text-anchor="middle">
        {to.across} × {to.down}
      </text>
    </g>
  );
}

/** An arrow key makes the quilt a block larger or smaller. */
function sizeByKey(event: KeyboardEvent): void {
  const [across, down] =
    { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key] ?? [];
  if (across === undefined || down === undefined) return;
  const now = counts();
  sizeTo(now.across + across, now.down + down);
  event.preventDefault();
  event.stopPropagation();
}

/** Four small squares at the quilt's lower right corner, outside it: they drag by whole blocks, and arrows move them. */
export function CornerHandle({
  top,
  per,
  at,
}: {
  top: Picture;
  per: number;
  at: (event: PointerEvent) => Point;
}) {
  const { across: w, down: h } = top;
  const tab = { x: w + per * 3, y: h + per * 3, side: per * 15 };
  const drag = corner.value;
  const now = counts();
  return (
    <>
      {drag === null ? null : <SizeDrawn top={top} per={per} to={drag} />}
      <text class="ru" font-size={per * 9} x={w - per} y={h + per * 14} text-anchor="end" aria-hidden="true">
        {words.wholeBlocks}
      </text>
      <path
        class="foldcorner"
        stroke-width={per}
        d={fourSquares(tab.x, tab.y, tab.side)}
        role="slider"
        tabindex={0}
        aria-label={words.quiltCorner}
        aria-valuemin={1}
        aria-valuemax={100}
        aria-valuenow={now.across}
        aria-valuetext={`${now.across} ${words.across}, ${now.down} ${words.down}`}
        onKeyDown={sizeByKey}
        onTouchStart={keepPage}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          corner.value = { across: now.across, down: now.down };
          event.stopPropagation();
        }}
        onPointerMove={(event) => {
          if (corner.value !== null) corner.value = blocksTo(top, at(event));
        }}
        onPointerUp={(event) => {
          const made = corner.value;
          corner.value = null;
          event.stopPropagation();
          if (made !== null && (made.across !== now.across || made.down !== now.down))
            sizeTo(made.across, made.down);
        }}
        onPointerCancel={() => {
          corner.value = null;
        }}
      />
    </>
  );
}

/** Four squares side by side: the quilt grows and shrinks by whole blocks. */
function fourSquares(x: number, y: number, side: number): string {
  const half = side / 2;
  return `M${x} ${y}h${side}v${side}h${-side}ZM${x + half} ${y}v${side}M${x} ${y + half}h${side}`;
}

/** How far a point has moved away from the middle of the quilt, by the side it began at. */
function outward(ring: RingPicture, from: Point, to: Point): number {
  const sides = [
    { off: Math.abs(from.x - ring.x), by: from.x - to.x },
    { off: Math.abs(ring.x + ring.across - from.x), by: to.x - from.x },
    { off: Math.abs(from.y - ring.y), by: from.y - to.y },
    { off: Math.abs(ring.y + ring.down - from.y), by: to.y - from.y },
  ];
  return sides.reduce((best, side) => (side.off < best.off ? side : best)).by;
}

function widen(index: number, marks: number): void {
  const { borders } = state.model.value;
  const border = borders[index];
  if (border === undefined || marks === 0) return;
  edit(
    (text) =>
      border.block === "" ? widenBorder(text, index, marks, rulerMark()) : widenPieced(text, index, marks),
    () => {
      const now = state.model.value.borders[index];
      return `${words.border(index + 1, now?.fabric || now?.block || "")} ${lengthSaid(ticksOf(now?.width, state.model.value.unit) ?? 0)}.`;
    },
  );
}

/** Where a border is drawn wider or narrower: two arrowheads with its width between. */
function WidthGrip({ x, y, per, text }: Point & { per: number; text: string }) {
  const [wide, high] = [per * 22, per * 7];
  return (
    <>
      <rect class="grip" x={x - wide} y={y - high} width={2 * wide} height={2 * high} stroke-width={per} />
      <path
        class="grip"
        stroke-width={per * 1.6}
        d={`M${x - per * 17} ${y - per * 2}l${per * 4} ${-per * 3}l${per * 4} ${per * 3}m${-per * 8} ${per * 4}l${per * 4} ${per * 3}l${per * 4} ${-per * 3}`}
      />
      <text class="ru" font-size={per * 9} x={x + per * 5} y={y + per * 3.2} text-anchor="middle">
        {text}
      </text>
    </>
  );
}

/** Plus and minus, or arrows, make a border a mark wider or narrower. */
function widenByKey(index: number, event: KeyboardEvent): void {
  const marks = { "+": 1, "=": 1, ArrowUp: 1, ArrowRight: 1, "-": -1, ArrowDown: -1, ArrowLeft: -1 }[
    event.key
  ];
  if (marks === undefined) return;
  widen(index, marks);
  event.preventDefault();
  event.stopPropagation();
}

/** How wide the border would be were it let go. */
function WidthDrawn({ ring, per, text }: { ring: RingPicture; per: number; text: string }) {
  return (
    <text
      class="ru big"
      font-size={per * 14}
      x={ring.x + ring.across / 2}
      y={ring.y + ring.down / 2}
      text-anchor="middle"
    >
      {text}
    </text>
  );
}

/** The line its stitches run on: half way between its edges. */
function middleOf(ring: RingPicture) {
  const [side, end] = [ring.side / 2, ring.end / 2];
  return {
    x: ring.x + side,
    y: ring.y + end,
    width: Math.max(0, ring.across - 2 * side),
    height: Math.max(0, ring.down - 2 * end),
  };
}

interface HandleOfRing {
  ring: RingPicture;
  index: number;
  per: number;
  at: (event: PointerEvent) => Point;
}

/** What is dragged, by the marks of the ruler. */
function RingGrip({ ring, index, per, at, width }: HandleOfRing & { width: number }) {
  const border = state.model.value.borders[index];
  const mark = rulerMark();
  const letGo = () => {
    widening.value = null;
    start = null;
  };
  return (
    <rect
      class="ringgrip"
      stroke-width={Math.max(per * 12, Math.min(ring.side, ring.end))}
      role="slider"
      tabindex={0}
      aria-label={`${words.border(index + 1, border?.fabric || border?.block || "")}, ${words.width}`}
      aria-valuenow={Math.round(width / mark)}
      aria-valuetext={lengthSaid(width)}
      onKeyDown={(event) => widenByKey(index, event)}
      onTouchStart={keepPage}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        start = at(event);
        widening.value = { index, marks: 0 };
        event.stopPropagation();
      }}
      onPointerMove={(event) => {
        if (start === null || widening.value === null) return;
        const marks = Math.round((outward(ring, start, at(event)) * UNIT) / mark);
        // Never thinner than a mark.
        widening.value = { index, marks: Math.max(marks, 1 - Math.round(width / mark)) };
      }}
      onPointerUp={(event) => {
        const marks = widening.value?.marks ?? 0;
        letGo();
        event.stopPropagation();
        widen(index, marks);
      }}
      onPointerCancel={letGo}
      {...middleOf(ring)}
    />
  );
}

/** The middle of a ring: its stitches, to be dragged by the marks of the ruler, or moved by + and −. */
export function RingHandle({ ring, index, per, at }: HandleOfRing) {
  const border = state.model.value.borders[index];
  const width = ticksOf(border?.width, state.model.value.unit);
  const drag = widening.value;
  const box = middleOf(ring);
  const mark = rulerMark();
  const shown = drag?.index === index ? drag.marks * mark : 0;
  return (
    <>
      <g aria-hidden="true">
        <rect class="heldhalo" stroke-width={per * 5} {...box} />
        <rect class="next" stroke-width={per * 3} stroke-dasharray={`${per * 8} ${per * 5}`} {...box} />
        {width === null ? null : (
          <WidthGrip x={box.x + box.width / 2} y={box.y + box.height} per={per} text={lengthNumber(width)} />
        )}
        {shown === 0 || width === null ? null : (
          <WidthDrawn ring={ring} per={per} text={lengthSaid(Math.max(mark, width + shown))} />
        )}
      </g>
      {width === null ? null : <RingGrip ring={ring} index={index} per={per} at={at} width={width} />}
    </>
  );
}

/** A ring as a shape with a hole, to be tapped. */
export function ringPath({ x, y, across, down, side, end }: RingPicture): string {
  const [right, low] = [x + across, y + down];
  return `M${x} ${y}H${right}V${low}H${x}ZM${x + side} ${y + end}V${low - end}H${right - side}V${y + end}Z`;
}
