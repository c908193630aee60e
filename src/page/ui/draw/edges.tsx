import { ticksOf } from "../../../edits/model.ts";
import {
  addBorder,
  type Finishing,
  setFinishing,
  setSashing,
  widenBorder,
} from "../../../edits/quilt-edits.ts";
import { setRingWidth, widenPieced } from "../../../edits/ring-edits.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import * as state from "../state.ts";
import { Label, lengthField, lengthHeld, rulerMark, Stepper } from "../steps.tsx";
import { Stitches, Swatch } from "./cloth.tsx";
import { BorderHand, clothOf, firstName, nameOf } from "./ring-hand.tsx";
import { Sashing } from "./sashing.tsx";

const usual = (inches: string, centimetres: string): string =>
  ["in", "yd"].includes(state.model.value.unit) ? inches : centimetres;

/** What a border is after the edit that is told of. */
function widthSaid(index: number, name: string): string {
  const { borders, unit } = state.model.value;
  return `${name} ${lengthHeld(ticksOf(borders[index]?.width, unit) ?? 0)}.`;
}

/** The width of a border, to be typed or stepped; one that makes others come out has the width it needs. */
function BorderWidth({ index, name }: { index: number; name: string }) {
  const { borders, unit } = state.model.value;
  const border = borders[index];
  const width = ticksOf(border?.width, unit);
  if (border === undefined) return null;
  if (width === null)
    return <span class="figure">{border.width === "fit" ? words.fitted : border.width}</span>;
  const widen = (marks: number) =>
    edit(
      (text) =>
        border.block === "" ? widenBorder(text, index, marks, rulerMark()) : widenPieced(text, index, marks),
      () => widthSaid(index, name),
    );
  return (
    <Stepper
      what={`${words.border(index + 1, name)}, ${words.width}`}
      value=""
      typed={lengthField(width, (made) =>
        edit(
          (text) => setRingWidth(text, index, made),
          () => widthSaid(index, name),
        ),
      )}
      less={() => widen(-4)}
      more={() => widen(4)}
    />
  );
}

/** A border as a ring: taken in hand it shows what can be done with it. */
function BorderLine({ index }: { index: number }) {
  const border = state.model.value.borders[index];
  if (border === undefined) return null;
  const held = state.borderInHand.value === index;
  const fabric = clothOf(border.fabric);
  const name = border.block === "" ? border.fabric : words.borderPieced(nameOf(border.block));
  return (
    <li class={held ? "held" : ""}>
      <button
        type="button"
        class="act ring"
        aria-pressed={held}
        onClick={() => {
          state.borderInHand.value = held ? null : index;
          state.placed.value = null;
        }}
      >
        <span class="heard">{words.borderHeard}</span>
        <span class="no">{index + 1}</span>
        {fabric === null ? null : <Swatch fabric={fabric} />}
        {name}
      </button>
      <BorderWidth index={index} name={name} />
      {held ? <BorderHand index={index} /> : null}
    </li>
  );
}

function Borders() {
  return (
    <>
      <h3>{words.bordersTitle}</h3>
      <ol class="rings">
        {state.model.value.borders.map((_, i) => (
          <BorderLine key={i} index={i} />
        ))}
      </ol>
    </>
  );
}

function Finish() {
  const model = state.model.value;
  const lines: { what: Finishing; now: string; there: boolean }[] = [
    { what: "binding", now: model.binding, there: model.binding !== "" },
    { what: "backing", now: model.backing, there: model.backing !== "" },
    { what: "wadding", now: "", there: model.wadding },
  ];
  return (
    <>
      <h3>{words.finishing}</h3>
      <ul class="rings">
        {lines.map(({ what, now, there }) => {
          const fabric = now === "" ? null : clothOf(now);
          const first = firstName();
          return (
            <li key={what}>
              <span class="figure">
                {fabric === null ? null : <Swatch fabric={fabric} />} {words[what]}
                <span class="quiet"> {there ? now : words.none}</span>
              </span>
              <span class="row tight">
                {what === "wadding" && there ? null : what !== "wadding" && now === first ? null : (
                  <button
                    type="button"
                    class="act"
                    aria-label={`${words[what]}: ${what === "wadding" ? words.addWadding : words.useFabric(first)}`}
                    onClick={() =>
                      edit((text) => setFinishing(text, what, first), `${words[what]}: ${first}`)
                    }
                  >
                    {what === "wadding" ? words.addWadding : words.useFabric(first)}
                  </button>
                )}
                {!there ? null : (
                  <button
                    type="button"
                    class="act"
                    aria-label={`${words[what]}: ${words.none}`}
                    onClick={() =>
                      edit((text) => setFinishing(text, what, null), `${words[what]}: ${words.none}`)
                    }
                  >
                    {words.none}
                  </button>
                )}
              </span>
            </li>
          );
        })}
      </ul>
    </>
  );
}

/** What goes round and between: borders as rings, sashing, and what finishes the quilt. */
export function Edges() {
  const { setting } = state.model.value;
  return (
    <>
      <Stitches />
      <Borders />
      <div class="row">
        <Label
          onClick={() => {
            const count = state.model.value.borders.length;
            edit(
              (text) => addBorder(text, firstName(), usual("3", "8")),
              words.border(count + 1, firstName()),
            );
            state.borderInHand.value = count;
            state.placed.value = null;
          }}
        >
          {words.addBorder}
        </Label>
        {setting.sashing === null && setting.layout === "straight" ? (
          <Label
            onClick={() =>
              edit(
                (text) => setSashing(text, { width: usual("1 1/2", "4"), fabric: firstName() }),
                words.addSashing,
              )
            }
          >
            {words.addSashing}
          </Label>
        ) : null}
      </div>
      <p class="hint">{words.hints.edges}</p>
      {setting.layout === "straight" ? null : <p class="quiet">{words.noSashingOnPoint}</p>}
      <Sashing />
      <Finish />
    </>
  );
}
