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
import { Label, lengthHeld, lengthTyped, rulerMark, Stepper } from "../steps.tsx";
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

function Borders() {
  const { borders, unit } = state.model.value;
  return (
    <>
      <h3>{words.bordersTitle}</h3>
      <ol class="rings">
        {borders.map((border, i) => {
          const held = state.borderInHand.value === i;
          const fabric = clothOf(border.fabric);
          const width = ticksOf(border.width, unit);
          const name = border.block === "" ? border.fabric : words.borderPieced(nameOf(border.block));
          const widen = (marks: number) =>
            edit(
              (text) =>
                border.block === "" ? widenBorder(text, i, marks, rulerMark()) : widenPieced(text, i, marks),
              () => widthSaid(i, name),
            );
          return (
            <li key={i} class={held ? "held" : ""}>
              <button
                type="button"
                class="act ring"
                aria-pressed={held}
                onClick={() => {
                  state.borderInHand.value = held ? null : i;
                  state.placed.value = null;
                }}
              >
                <span class="heard">{words.borderHeard}</span>
                <span class="no">{i + 1}</span>
                {fabric === null ? null : <Swatch fabric={fabric} />}
                {name}
              </button>
              {width === null ? (
                <span class="figure">{border.width === "fit" ? words.fitted : border.width}</span>
              ) : (
                <Stepper
                  what={`${words.border(i + 1, name)}, ${words.width}`}
                  value=""
                  typed={{
                    now: lengthHeld(width),
                    take: (wish) => {
                      const made = lengthTyped(wish);
                      if (made !== null)
                        edit(
                          (text) => setRingWidth(text, i, made),
                          () => widthSaid(i, name),
                        );
                    },
                  }}
                  less={() => widen(-4)}
                  more={() => widen(4)}
                />
              )}
              {held ? <BorderHand index={i} /> : null}
            </li>
          );
        })}
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
