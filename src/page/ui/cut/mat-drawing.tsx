import { useLayoutEffect, useRef } from "preact/hooks";
import type { MatFabric } from "../../planner/mat.ts";
import type { MatLay, MatPart, MatStrip } from "../../planner/mat-parts.ts";
import { words } from "../../words/index.ts";
import * as state from "../state.ts";
import { isOff, isTicked, stripOnMat, takeStrip } from "./at-the-mat.ts";
import { LEAST_READ, numberPlace } from "./mat-room.ts";
import { useWideOnScreen } from "./wide-on-screen.ts";

/** Millimetres round the cloth, and for the numbers beside it; on a small screen they need so many points. */
const EDGE = 14;
const NUMBERS = 92;
const NUMBERS_ON_SCREEN = 36;
/** Largest letter, and smallest part that holds one. */
const LARGEST = 42;
const SMALLEST = 17;
/** Height of a number's pill in millimetres, in points where that would be too small to read, and how wide it is for it. */
const PILL = 34;
const PILL_ON_SCREEN = 17;
const PILL_WIDE = 1.55;
/** Smallest letters of the ruler in points. */
const RULER_ON_SCREEN = 11;

const short = (gives: readonly string[]): string => gives.slice(0, 4).join(", ");

/** What a strip gives, by bag: `4 A`. */
export function givesOf(fabric: MatFabric, strip: MatStrip): string[] {
  const counts = new Map<number, number>();
  for (const { bag, holds } of strip.parts) if (bag !== null) counts.set(bag, (counts.get(bag) ?? 0) + holds);
  return [...counts].map(([bag, count]) => `${count} ${fabric.bags[bag]?.letter ?? ""}`);
}

export function stateWord(fabric: MatFabric, strip: MatStrip): string {
  if (isTicked(fabric.name, strip)) return words.stripStates.cut;
  return isOff(fabric.name, strip) ? words.stripStates.off : "";
}

/** A letter or a length inside a rectangle, upright or along it, where it finds room to be read. */
function Says({ part, text, size, point }: { part: MatPart; text: string; size: number; point: number }) {
  const upright = part.along > part.across * 1.6 && text.length > 2;
  const [long, high] = upright ? [part.along, part.across] : [part.across, part.along];
  const fit = Math.min(size, high * 0.62, (long * 0.92) / (text.length * 0.62));
  if (fit < Math.max(SMALLEST * 0.55, LEAST_READ * point)) return null;
  const [x, y] = [part.x + part.across / 2, part.y + part.along / 2];
  return (
    <text x={x} y={y + fit * 0.36} font-size={fit} transform={upright ? `rotate(-90 ${x} ${y})` : undefined}>
      {text}
    </text>
  );
}

/** A piece without its letter. */
export function Piece({ part, fabric, held }: { part: MatPart; fabric: MatFabric; held: boolean }) {
  const bag = part.bag === null ? null : fabric.bags[part.bag];
  const box = { x: part.x, y: part.y, width: part.across, height: part.along };
  if (part.d === "")
    return <rect class={`mp${bag == null ? " waste" : ""}${held ? " picked" : ""}`} {...box} />;
  return (
    <>
      <rect class="mp waste" {...box} />
      <path class={held ? "mp picked" : "mp"} d={part.d} />
    </>
  );
}

/** The letter of a piece's bag, or how large a rest is that is kept. `point`: millimetres of cloth to a point of the screen. */
export function Letter({ part, fabric, point = 0 }: { part: MatPart; fabric: MatFabric; point?: number }) {
  const bag = part.bag === null ? null : fabric.bags[part.bag];
  if (bag != null)
    return Math.min(part.across, part.along) < SMALLEST && part.d === "" ? null : (
      <Says part={part} text={bag.letter} size={Math.max(LARGEST, LEAST_READ * point)} point={point} />
    );
  if (part.says === "" || Math.min(part.across, part.along) < 55) return null;
  return (
    <g class="ofrest">
      <Says
        part={part}
        text={part.keep ? words.keepPiece(part.says) : part.says}
        size={Math.max(26, LEAST_READ * point)}
        point={point}
      />
    </g>
  );
}

function Strip({ strip, fabric }: { strip: MatStrip; fabric: MatFabric }) {
  const now = stripOnMat.value;
  const lit = now !== null && now.lay === strip.lay && now.number === strip.number;
  const cut = isTicked(fabric.name, strip);
  const off = !cut && isOff(fabric.name, strip);
  const label = words.stripHeard(
    strip.number,
    strip.width,
    short(givesOf(fabric, strip)),
    stateWord(fabric, strip),
  );
  return (
    <g
      class={`mstrip${lit ? " lit" : ""}${cut ? " cut" : ""}${off ? " off" : ""}`}
      data-strip={`${strip.lay}:${strip.number}`}
      role="button"
      tabindex={lit ? 0 : -1}
      aria-pressed={lit}
      aria-label={label}
      onClick={({ target }) => {
        takeStrip(strip);
        const at = (target as Element).closest("[data-bag]")?.getAttribute("data-bag") ?? "";
        state.bagInHand.value = lit && at !== "" ? Number(at) : null;
      }}
    >
      {strip.parts.map((part, i) => (
        <g key={i} data-bag={part.bag ?? ""}>
          <Piece
            part={part}
            fabric={fabric}
            held={lit && part.bag !== null && part.bag === state.bagInHand.value}
          />
        </g>
      ))}
      <rect class="mframe" x={strip.x} y={strip.y} width={strip.across} height={strip.along} />
    </g>
  );
}

/** The letters of a strip: apart from it, since what is a button is told by its name alone. */
function Letters({ strip, fabric, point }: { strip: MatStrip; fabric: MatFabric; point: number }) {
  const now = stripOnMat.value;
  const lit = now !== null && now.lay === strip.lay && now.number === strip.number;
  const cut = isTicked(fabric.name, strip);
  return (
    <g class={`mletters${lit ? " lit" : ""}${cut ? " cut" : ""}`} aria-hidden="true">
      {strip.parts.map((part, i) => (
        <Letter key={i} part={part} fabric={fabric} point={point} />
      ))}
    </g>
  );
}

/** The number of a strip beside it; a tick where it is cut. What would be too small to read is left to the strips at the foot. */
function NumberOf({
  strip,
  fabric,
  lay,
  point,
}: {
  strip: MatStrip;
  fabric: MatFabric;
  lay: MatLay;
  point: number;
}) {
  const cut = isTicked(fabric.name, strip);
  const now = stripOnMat.value;
  const lit = now !== null && now.lay === strip.lay && now.number === strip.number;
  const wished = Math.max(PILL, PILL_ON_SCREEN * point);
  const high = lit || strip.lengthwise ? wished : Math.min(wished, Math.max(20, strip.along * 0.9));
  if (high * 0.68 < LEAST_READ * point) return null;
  const wide = high * PILL_WIDE;
  const { x, y } = numberPlace(strip, lay, { wide, high }, EDGE + 8);
  return (
    <g class={lit ? "mno lit" : "mno"} aria-hidden="true" onClick={() => takeStrip(strip)}>
      <rect x={x} y={y} width={wide} height={high} rx={high / 2} />
      {cut ? (
        <path
          d={`M${x + wide * 0.31} ${y + high * 0.52}l${high * 0.23} ${high * 0.24}l${high * 0.38} -${high * 0.5}`}
        />
      ) : (
        <text x={x + wide / 2} y={y + high * 0.74} font-size={high * 0.68}>
          {strip.number}
        </text>
      )}
    </g>
  );
}

/** Marks along the top, every six inches or twenty centimetres. */
function Ruler({ across, point }: { across: number; point: number }) {
  const inches = ["in", "yd"].includes(state.model.value.unit);
  const size = Math.max(24, RULER_ON_SCREEN * point);
  const least = inches ? 6 : 20;
  const mark = inches ? 25.4 : 10;
  // Marks that would touch are told every second.
  const each = least * mark < size * 2 ? least * 2 : least;
  const step = each * mark;
  const marks = Array.from({ length: Math.floor(across / step) + 1 }, (_, i) => i);
  return (
    <g class="mruler">
      {marks.map((i) => (
        <g key={i}>
          <line x1={i * step} y1="-4" x2={i * step} y2="-14" />
          <text x={i * step} y="-18" font-size={size}>
            {i * each}
          </text>
        </g>
      ))}
    </g>
  );
}

/** Least part of the width that a small cloth is drawn in. */
const LEAST = 0.4;

interface LayProps {
  lay: MatLay;
  fabric: MatFabric;
  widest: number;
  /** Points of the screen there are for the widest cloth; 0 before that is known. */
  room: number;
}

function LayDrawing({ lay, fabric, widest, room }: LayProps) {
  const strips = lay.strips;
  // All cloths to one scale, as far as a small one can still be read.
  const part = Math.max(LEAST, (lay.across + EDGE + NUMBERS) / (widest + EDGE + NUMBERS));
  const point = room === 0 ? 0 : (lay.across + EDGE) / Math.max(40, room * part - NUMBERS_ON_SCREEN);
  const numbers = Math.max(NUMBERS, NUMBERS_ON_SCREEN * point);
  const above = 22 + Math.max(24, RULER_ON_SCREEN * point);
  return (
    <svg
      class="matlay"
      style={{ width: `${100 * part}%` }}
      viewBox={`${-EDGE} ${-above} ${lay.across + EDGE + numbers} ${lay.along + above + EDGE}`}
      role="group"
      aria-label={words.matLabel(lay.bolt ? fabric.name : `${fabric.name}, ${lay.name}`)}
    >
      <Ruler across={lay.across} point={point} />
      {lay.beside.map((part, i) => (
        <g key={i} class="mbeside">
          <rect class="mp waste" x={part.x} y={part.y} width={part.across} height={part.along} />
          {part.says === "" ? null : (
            <Says
              part={part}
              text={part.keep ? words.keepPiece(part.says) : words.staysUncut(part.says)}
              size={Math.max(30, LEAST_READ * point)}
              point={point}
            />
          )}
        </g>
      ))}
      {strips.map((strip) => (
        <Strip key={strip.number} strip={strip} fabric={fabric} />
      ))}
      {strips.map((strip) => (
        <Letters key={strip.number} strip={strip} fabric={fabric} point={point} />
      ))}
      {strips.map((strip) => (
        <NumberOf key={strip.number} strip={strip} fabric={fabric} lay={lay} point={point} />
      ))}
    </svg>
  );
}

/** The cloth of a fabric, unrolled as wide as there is room, the strip in hand lit. Arrows go from strip to strip. */
export function MatDrawing({ fabric, style }: { fabric: MatFabric; style: Record<string, string> }) {
  const place = useRef<HTMLDivElement>(null);
  const room = useWideOnScreen(place);
  const widest = Math.max(...fabric.lays.map(({ across }) => across));
  const now = stripOnMat.value;
  useLayoutEffect(() => {
    const box = place.current;
    const lit = box?.querySelector<SVGGElement>(".mstrip.lit");
    if (box == null || lit == null) return;
    const [outer, inner] = [box.getBoundingClientRect(), lit.getBoundingClientRect()];
    if (inner.top < outer.top || inner.bottom > outer.bottom)
      box.scrollTop += inner.top - outer.top - Math.max(0, (outer.height - inner.height) / 3);
  }, [now?.lay, now?.number, fabric.mark]);
  const move = (event: KeyboardEvent) => {
    const step = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 }[event.key];
    const all = fabric.lays.flatMap(({ strips }) => strips);
    if (event.key === "Enter" || event.key === " ") {
      if (!(event.target instanceof SVGElement)) return;
      event.preventDefault();
      if (now !== null) {
        const bags = [...new Set(now.parts.flatMap(({ bag }) => (bag === null ? [] : [bag])))];
        const at = bags.indexOf(state.bagInHand.value ?? -1);
        state.bagInHand.value = bags[at + 1] ?? null;
      }
      return;
    }
    if (step === undefined) return;
    event.preventDefault();
    const at = now === null ? 0 : all.findIndex((one) => one.lay === now.lay && one.number === now.number);
    const next = all[Math.min(all.length - 1, Math.max(0, at + step))];
    if (next === undefined) return;
    takeStrip(next);
    state.bagInHand.value = null;
    requestAnimationFrame(() =>
      place.current?.querySelector<SVGGElement>(".mstrip.lit")?.focus({ preventScroll: true }),
    );
  };
  return (
    // A long fabric scrolls in its place: that is to be had by keys too.
    <div
      ref={place}
      class="matcloth"
      style={style}
      onKeyDown={move}
      tabindex={0}
      role="group"
      aria-label={fabric.name}
    >
      {fabric.lays.map((lay, i) => (
        <LayDrawing key={`${fabric.name} ${i}`} lay={lay} fabric={fabric} widest={widest} room={room} />
      ))}
    </div>
  );
}
