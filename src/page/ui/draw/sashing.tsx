import { lengthText } from "../../../edits/block-edits.ts";
import { ticksOf } from "../../../edits/model.ts";
import { setCornerstones, setSashing, setSashRing } from "../../../edits/quilt-edits.ts";
import { pieceSashes, pieceSashStones, plainSashes } from "../../../edits/ring-edits.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import * as state from "../state.ts";
import { lengthHeld, lengthSaid, lengthTyped, rulerMark, Stepper } from "../steps.tsx";
import { Swatch } from "./cloth.tsx";
import { Choices, clothOf, firstName, nameOf, piece, secondName } from "./ring-hand.tsx";

/** The strips between blocks: their width, fabric or block, and what stands where they cross. */
export function Sashing() {
  const { setting, unit } = state.model.value;
  const { sashing } = setting;
  if (sashing === null) return null;
  const width = ticksOf(sashing.width, unit) ?? 0;
  const fabric = clothOf(sashing.fabric);
  const first = firstName();
  const step = 4 * rulerMark();
  const plain = sashing.block === "";
  // In the fabric of the sashes they would not be seen.
  const stone = first === sashing.fabric ? secondName() : first;
  const stones = sashing.cornerstones !== "" || sashing.stoneBlock !== "";
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
          value=""
          typed={{
            now: lengthHeld(width),
            take: (wish) => {
              const made = lengthTyped(wish);
              if (made !== null)
                edit(
                  (text) => setSashing(text, { width: made, fabric: sashing.fabric }),
                  `${words.sashing} ${made}.`,
                );
            },
          }}
          less={() => widen(-1)}
          more={() => widen(1)}
        />
      </div>
      <Choices
        all={[
          {
            label: words.useFabric(first),
            act: () =>
              edit(
                (text) =>
                  plain
                    ? setSashing(text, { width: sashing.width, fabric: first })
                    : plainSashes(text, first),
                words.useFabric(first),
              ),
          },
          plain
            ? { label: words.pieceIt, act: () => piece(pieceSashes, words.piecedSashes) }
            : {
                label: words.drawBlock(nameOf(sashing.block)),
                act: () => {
                  state.sheet.value = { block: sashing.block };
                },
              },
          {
            label: words.cornerstones,
            pressed: stones,
            act: () => edit((text) => setCornerstones(text, stones ? null : stone), words.cornerstones),
          },
          ...(sashing.cornerstones === "" || clothOf(sashing.cornerstones)?.name === first
            ? []
            : [
                {
                  label: words.stonesIn(first),
                  act: () => edit((text) => setCornerstones(text, first), words.stonesIn(first)),
                },
              ]),
          ...(sashing.cornerstones === ""
            ? []
            : [{ label: words.pieceStones, act: () => piece(pieceSashStones, words.pieceStones) }]),
          ...(sashing.stoneBlock === ""
            ? []
            : [
                {
                  label: words.drawBlock(nameOf(sashing.stoneBlock)),
                  act: () => {
                    state.sheet.value = { block: sashing.stoneBlock };
                  },
                },
              ]),
          {
            label: words.sashRing,
            pressed: sashing.ring,
            act: () => edit((text) => setSashRing(text, !sashing.ring), words.sashRing),
          },
          {
            label: words.removeSashing,
            act: () => edit((text) => setSashing(text, null), words.removeSashing),
          },
        ]}
      />
    </>
  );
}
