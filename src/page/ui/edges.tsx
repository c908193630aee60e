import { lengthText } from "../../edits/block-edits.ts";
import { fabricFor, ticksOf } from "../../edits/model.ts";
import {
  addBorder,
  type Finishing,
  removeBorder,
  setBorder,
  setCornerstones,
  setFinishing,
  setSashing,
  setSashRing,
  widenBorder,
} from "../../edits/quilt-edits.ts";
import { words } from "../words/en.ts";
import { edit } from "./actions.ts";
import { Stitches, Swatch } from "./cloth.tsx";
import * as state from "./state.ts";
import { Label, lengthSaid, rulerMark, Stepper } from "./steps.tsx";

const NO_ROLES = { roles: {} };
const clothOf = (word: string) => fabricFor(word, NO_ROLES, state.model.value);
const firstName = (): string => state.model.value.fabrics[state.firstFabric.value]?.name ?? "";
const usual = (inches: string, centimetres: string): string =>
  ["in", "yd"].includes(state.model.value.unit) ? inches : centimetres;

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
          const name = border.block === "" ? border.fabric : words.borderPieced;
          const widen = (marks: number) =>
            edit(
              (text) => widenBorder(text, i, marks, rulerMark()),
              () => `${name} ${lengthSaid(ticksOf(state.model.value.borders[i]?.width, unit) ?? 0)}.`,
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
                <span class="figure">{border.width}</span>
              ) : (
                <Stepper
                  what={`${words.border(i + 1, name)}, ${words.width}`}
                  value={lengthSaid(width)}
                  less={() => widen(-4)}
                  more={() => widen(4)}
                />
              )}
              {!held ? null : (
                <div class="row">
                  {border.block !== "" ? null : (
                    <button
                      type="button"
                      class="act"
                      onClick={() =>
                        edit(
                          (text) => setBorder(text, i, "fabric", firstName()),
                          words.useFabric(firstName()),
                        )
                      }
                    >
                      {words.useFabric(firstName())}
                    </button>
                  )}
                  {border.block !== "" ? null : (
                    <button
                      type="button"
                      class="act"
                      aria-pressed={border.corners === "mitred"}
                      onClick={() =>
                        edit(
                          (text) =>
                            setBorder(
                              text,
                              i,
                              "corners",
                              border.corners === "mitred" ? "sides first" : "mitred",
                            ),
                          words.corner4,
                        )
                      }
                    >
                      {words.corner4}
                    </button>
                  )}
                  <button
                    type="button"
                    class="act"
                    onClick={() => {
                      state.borderInHand.value = null;
                      edit((text) => removeBorder(text, i), words.removeBorder);
                    }}
                  >
                    {words.removeBorder}
                  </button>
                </div>
              )}
            </li>
          );
        })}
      </ol>
    </>
  );
}

function Sashing() {
  const { setting, unit } = state.model.value;
  const sashing = setting.sashing;
  if (sashing === null) return null;
  const width = ticksOf(sashing.width, unit) ?? 0;
  const fabric = clothOf(sashing.fabric);
  const step = 4 * rulerMark();
  const widen = (by: number) => {
    const next = Math.max(step, width + by * step);
    edit(
      (text) => setSashing(text, { width: lengthText(next, state.model.value), fabric: sashing.fabric }),
      `${words.sashing} ${lengthSaid(next)}.`,
    );
  };
  return (
    <>
      <h3>{words.sashing}</h3>
      <div class="row">
        {fabric === null ? null : <Swatch fabric={fabric} />}
        <Stepper
          what={`${words.sashing}, ${words.width}`}
          value={lengthSaid(width)}
          less={() => widen(-1)}
          more={() => widen(1)}
        />
        <button
          type="button"
          class="act"
          onClick={() =>
            edit(
              (text) => setSashing(text, { width: sashing.width, fabric: firstName() }),
              words.useFabric(firstName()),
            )
          }
        >
          {words.useFabric(firstName())}
        </button>
        <button
          type="button"
          class="act"
          aria-pressed={sashing.cornerstones !== ""}
          onClick={() =>
            edit(
              (text) => setCornerstones(text, sashing.cornerstones === "" ? firstName() : null),
              words.cornerstones,
            )
          }
        >
          {words.cornerstones}
        </button>
        <button
          type="button"
          class="act"
          aria-pressed={sashing.ring}
          onClick={() => edit((text) => setSashRing(text, !sashing.ring), words.sashRing)}
        >
          {words.sashRing}
        </button>
        <button
          type="button"
          class="act"
          onClick={() => edit((text) => setSashing(text, null), words.removeSashing)}
        >
          {words.removeSashing}
        </button>
      </div>
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
        {setting.sashing === null ? (
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
      <Sashing />
      <Finish />
    </>
  );
}
