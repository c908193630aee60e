import { useRef, useState } from "preact/hooks";
import { setPrint, setRepeat } from "../../../edits/fabric-edits.ts";
import { type FabricModel, ticksOf } from "../../../edits/model.ts";
import { choosePicture } from "../../files.ts";
import { type Box, boxOf, LEAST_BOX, type Photo, shownAs, shownBy, turnedOn, WHOLE } from "../../photos.ts";
import { UNIT, upPath } from "../../planner/picture.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import { axisOf, kindOf, printText, upOf } from "../draw/print-words.ts";
import { pointIn } from "../draw/quilt-handles.tsx";
import { Field } from "../field.tsx";
import { Group } from "../group.tsx";
import { saidOnPaper } from "../said-here.tsx";
import * as state from "../state.ts";
import { Label, lengthSaid, lengthTyped, rulerMark, Stepper } from "../steps.tsx";
import { typedInto } from "../typed-into.ts";
import { PhotoPicture, photoOf } from "./photo-fills.tsx";
import { boxSize, changePhoto, dropPhoto, sayRepeat, takePhoto, turnArrow } from "./photo-hand.ts";

/** How far an arrow key moves a box, as a share of the picture. */
const STEP = 0.02;

function boxed(fabric: FabricModel, photo: Photo, box: Box): void {
  const next = { ...photo, box };
  changePhoto(fabric, next, words.cloth.boxSaid(boxSize(next)));
}

/** Arrow keys move the box, and make it larger and smaller with shift. */
function boxByKey(fabric: FabricModel, photo: Photo, event: KeyboardEvent): void {
  const by = {
    ArrowLeft: [-STEP, 0],
    ArrowRight: [STEP, 0],
    ArrowUp: [0, -STEP],
    ArrowDown: [0, STEP],
  }[event.key];
  if (by === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
  event.preventDefault();
  event.stopPropagation();
  const [dx = 0, dy = 0] = by;
  const { x, y, wide, high } = photo.box;
  const hold = (value: number, most: number): number => Math.min(most, Math.max(0, value));
  const next = event.shiftKey
    ? boxOf(x, y, x + Math.max(LEAST_BOX, wide + dx), y + Math.max(LEAST_BOX, high + dy))
    : { wide, high, x: hold(x + dx, 1 - wide), y: hold(y + dy, 1 - high) };
  boxed(fabric, photo, next);
}

/** What a pointer does on the picture: it drags over what repeats, or taps two corners of it. */
function useBoxHand(fabric: FabricModel, photo: Photo) {
  const svg = useRef<SVGSVGElement>(null);
  const from = useRef<{ x: number; y: number; drag: boolean } | null>(null);
  const [drawn, setDrawn] = useState<Box | null>(null);
  const { across: w, down: h } = shownBy(photo);
  const at = (event: PointerEvent): { x: number; y: number } => {
    const { x, y } = pointIn(svg.current, event);
    return { x: x / w, y: y / h };
  };
  const down = (event: PointerEvent) => {
    if (event.button !== 0) return;
    if (event.pointerType === "touch") return;
    svg.current?.setPointerCapture(event.pointerId);
    if (from.current === null) from.current = { ...at(event), drag: true };
  };
  const moved = (event: PointerEvent) => {
    const start = from.current;
    if (start === null || !start.drag || event.buttons === 0) return;
    const now = at(event);
    setDrawn(boxOf(start.x, start.y, now.x, now.y));
  };
  const up = (event: PointerEvent) => {
    const now = at(event);
    const start = from.current;
    setDrawn(null);
    const far = start !== null && Math.max(Math.abs(now.x - start.x), Math.abs(now.y - start.y)) > LEAST_BOX;
    if (start === null || (start.drag && !far)) {
      from.current = { ...now, drag: false };
      state.said.value = words.cloth.boxCorner;
      return;
    }
    from.current = null;
    if (far) boxed(fabric, photo, boxOf(start.x, start.y, now.x, now.y));
  };
  return { svg, drawn, down, moved, up, key: (event: KeyboardEvent) => boxByKey(fabric, photo, event) };
}

/** The picture with its box and its arrow: drag over what repeats, or tap two corners, or use the arrow keys. */
function Picture({ fabric, photo }: { fabric: FabricModel; photo: Photo }) {
  const { svg, drawn, down, moved, up, key } = useBoxHand(fabric, photo);
  const { across: w, down: h } = shownBy(photo);
  const box = drawn ?? photo.box;
  const [x, y, wide, high] = [box.x * w, box.y * h, box.wide * w, box.high * h];
  const line = Math.max(w, h) / 180;
  const long = Math.min(wide, high) * 0.55;
  const arrow = upPath(
    { x: x + wide / 2, y: y + high / 2, up: upOf(photo, fabric), long },
    kindOf(fabric.print) === "two-way",
  );
  return (
    <svg
      ref={svg}
      class="photobox"
      viewBox={`0 0 ${w} ${h}`}
      role="application"
      tabindex={0}
      aria-label={words.cloth.photoBox(fabric.name, boxSize(photo))}
      onPointerDown={down}
      onPointerMove={moved}
      onPointerUp={up}
      onKeyDown={key}
    >
      <PhotoPicture photo={photo} />
      <path class="outbox" d={`M0 0H${w}V${h}H0ZM${x} ${y}V${y + high}H${x + wide}V${y}Z`} />
      <rect class="boxhalo" x={x} y={y} width={wide} height={high} stroke-width={line * 2.4} />
      <rect class="boxline" x={x} y={y} width={wide} height={high} stroke-width={line} />
      {kindOf(fabric.print) === "none" ? null : (
        <g class="ups" aria-hidden="true">
          <path class="uphalo" d={arrow} />
          <path class="upline" d={arrow} />
        </g>
      )}
    </svg>
  );
}

/** How often the print comes again: what is in the box, or a size that is typed. */
function Repeat({ fabric, photo }: { fabric: FabricModel; photo: Photo | null }) {
  const held = fabric.repeat === null ? "" : fabric.repeatText;
  return (
    <div class="row fields">
      <label>
        <span>{words.cloth.repeatField}</span>
        <Field
          value={held}
          placeholder={words.cloth.repeatExample}
          onChange={({ currentTarget }) =>
            typedInto(
              currentTarget,
              held,
              (text, wish) => setRepeat(text, fabric.index, wish),
              words.cloth.repeatField,
              words.cloth.repeatWrong,
            )
          }
        />
      </label>
      {photo === null ? null : (
        <Label pressed={fabric.repeat !== null} onClick={() => sayRepeat(fabric, photo)}>
          {words.cloth.repeatIs}
        </Label>
      )}
    </div>
  );
}

/** A length of the box in true size, to be typed or stepped. */
function Side({ fabric, photo, way }: { fabric: FabricModel; photo: Photo; way: "across" | "down" }) {
  const whole = shownBy(photo)[way] * UNIT;
  const [name, side] = way === "across" ? (["wide", "x"] as const) : (["high", "y"] as const);
  const now = photo.box[name] * whole;
  const to = (ticks: number): void => {
    const part = Math.min(1, Math.max(LEAST_BOX, ticks / whole));
    boxed(fabric, photo, { ...photo.box, [name]: part, [side]: Math.min(photo.box[side], 1 - part) });
  };
  const label = way === "across" ? words.cloth.boxAcross : words.cloth.boxDown;
  return (
    <Stepper
      what={label}
      value=""
      typed={{
        now: lengthSaid(now),
        after: ` ${label}`,
        take: (wish) => {
          const typed = lengthTyped(wish);
          const ticks = typed === null ? null : ticksOf(typed, state.model.value.unit);
          if (ticks !== null) to(ticks);
        },
      }}
      less={() => to(now - 2 * rulerMark())}
      more={() => to(now + 2 * rulerMark())}
    />
  );
}

function Seen({ fabric, photo }: { fabric: FabricModel; photo: Photo }) {
  const across = shownBy(photo).across * UNIT;
  const up = upOf(photo, fabric);
  return (
    <>
      <Picture fabric={fabric} photo={photo} />
      <p class="said" aria-hidden="true">
        {saidOnPaper() || words.cloth.photoHelp}
      </p>
      <div class="row fields">
        <label>
          <span>{words.cloth.photoWidth}</span>
          <Field
            value={lengthSaid(across)}
            onChange={({ currentTarget }) => {
              const typed = lengthTyped(currentTarget.value.trim());
              const ticks = typed === null ? null : ticksOf(typed, state.model.value.unit);
              if (ticks !== null)
                changePhoto(
                  fabric,
                  shownAs(photo, ticks / UNIT),
                  words.cloth.photoWide(fabric.name, lengthSaid(ticks)),
                );
              currentTarget.value = lengthSaid(ticks ?? across);
            }}
          />
        </label>
        <span class="after">{words.cloth.photoWidthAfter}</span>
      </div>
      {photo.told ? null : <p class="quiet">{words.cloth.photoWidthGuess(lengthSaid(across))}</p>}
      <div class="row">
        <button
          type="button"
          class="label arrowbutton"
          aria-label={words.cloth.arrow(words.cloth.arrowWays[up] ?? "")}
          onClick={() => turnArrow(fabric, photo)}
        >
          <svg viewBox="-12 -12 24 24" width="26" height="26" aria-hidden="true">
            <path class="arrowhere" d="M0 9V-9M-6 -2L0 -9L6 -2" transform={`rotate(${up})`} />
          </svg>
          <span aria-hidden="true">{words.cloth.arrowTurn}</span>
        </button>
        <Label
          onClick={() => {
            const turned = turnedOn({ ...photo, up });
            changePhoto(fabric, turned, words.cloth.photoTurned(fabric.name));
          }}
        >
          {words.cloth.turnPhoto}
        </Label>
        <Label onClick={() => boxed(fabric, photo, WHOLE)}>{words.cloth.wholePhoto}</Label>
      </div>
      <div class="facts">
        <Side fabric={fabric} photo={photo} way="across" />
        <Side fabric={fabric} photo={photo} way="down" />
      </div>
    </>
  );
}

/** Whether a print has a way up, and along which way of the fabric it reads. */
function Reading({ fabric }: { fabric: FabricModel }) {
  const [kind, axis] = [kindOf(fabric.print), axisOf(fabric.print)];
  return (
    <>
      <Group name="row choice" label={words.print}>
        {Object.entries(words.prints).map(([value, called]) => (
          <button
            key={value}
            type="button"
            class="pickword"
            aria-pressed={kind === value}
            onClick={() =>
              edit(
                (text) => setPrint(text, fabric.index, printText(value, axis)),
                `${fabric.name}: ${called}`,
              )
            }
          >
            {called}
          </button>
        ))}
      </Group>
      {kind === "none" ? null : (
        <Group name="row choice" label={words.cloth.axisLabel}>
          {(["along", "across"] as const).map((one) => (
            <button
              key={one}
              type="button"
              class="pickword"
              aria-pressed={axis === one}
              onClick={() =>
                edit(
                  (text) => setPrint(text, fabric.index, printText(kind, one)),
                  words.cloth.axisSaid(fabric.name, words.cloth.axes[one] ?? ""),
                )
              }
            >
              {words.cloth.axes[one]}
            </button>
          ))}
        </Group>
      )}
    </>
  );
}

/** Which way the print reads, along which way of the fabric, how often it comes again, and a photo to say all that on. */
export function PrintLeaf({ fabric }: { fabric: FabricModel }) {
  const photo = photoOf(fabric);
  const choose = async () => {
    const file = await choosePicture();
    if (file !== null) await takePhoto(fabric, file);
  };
  return (
    <>
      <Reading fabric={fabric} />
      {photo === null ? <Repeat fabric={fabric} photo={null} /> : null}
      <h3>{words.cloth.photo}</h3>
      {photo === null ? null : (
        <>
          <Seen fabric={fabric} photo={photo} />
          <Repeat fabric={fabric} photo={photo} />
        </>
      )}
      <div class="row">
        <Label onClick={() => void choose()}>
          {photo === null ? words.cloth.takePhoto : words.cloth.otherPhoto}
        </Label>
        {photo === null ? null : <Label onClick={() => dropPhoto(fabric)}>{words.cloth.dropPhoto}</Label>}
      </div>
    </>
  );
}
