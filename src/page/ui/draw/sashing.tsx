import { lengthText } from "../../../edits/block-edits.ts";
import { ticksOf } from "../../../edits/model.ts";
import { setCornerstones, setSashing, setSashRing } from "../../../edits/quilt-edits.ts";
import { pieceSashes, pieceSashStones, plainSashes } from "../../../edits/ring-edits.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import * as state from "../state.ts";
import { lengthField, lengthSaid, rulerMark, Stepper } from "../steps.tsx";
import { Swatch } from "./cloth.tsx";
import { type Choice, Choices, clothOf, firstName, nameOf, piece, secondName } from "./ring-hand.tsx";

type Sashes = NonNullable<(typeof state.model.value.setting)["sashing"]>;

/** Draws the block that sashes or their crossings are made of. */
const drawn = (block: string): Choice => ({
  label: words.drawBlock(nameOf(block)),
  act: () => {
    state.sheet.value = { block };
  },
});

/** Their fabric, or the block they are made of. */
function ofItsStrips(sashing: Sashes): Choice[] {
  const first = firstName();
  const plain = sashing.block === "";
  return [
    {
      label: words.useFabric(first),
      act: () =>
        edit(
          (text) =>
            plain ? setSashing(text, { width: sashing.width, fabric: first }) : plainSashes(text, first),
          words.useFabric(first),
        ),
    },
    plain
      ? { label: words.pieceIt, act: () => piece(pieceSashes, words.piecedSashes) }
      : drawn(sashing.block),
  ];
}

/** What stands where they cross. */
function ofItsStones(sashing: Sashes): Choice[] {
  const first = firstName();
  // In the fabric of the sashes they would not be seen.
  const stone = first === sashing.fabric ? secondName() : first;
  const stones = sashing.cornerstones !== "" || sashing.stoneBlock !== "";
  const all: Choice[] = [
    {
      label: words.cornerstones,
      pressed: stones,
      act: () => edit((text) => setCornerstones(text, stones ? null : stone), words.cornerstones),
    },
  ];
  if (sashing.cornerstones !== "" && clothOf(sashing.cornerstones)?.name !== first)
    all.push({
      label: words.stonesIn(first),
      act: () => edit((text) => setCornerstones(text, first), words.stonesIn(first)),
    });
  if (sashing.cornerstones !== "")
    all.push({ label: words.pieceStones, act: () => piece(pieceSashStones, words.pieceStones) });
  if (sashing.stoneBlock !== "") all.push(drawn(sashing.stoneBlock));
  return all;
}

/** How wide they are, to be typed or stepped. */
function SashWidth({ sashing }: { sashing: Sashes }) {
  const width = ticksOf(sashing.width, state.model.value.unit) ?? 0;
  const step = 4 * rulerMark();
  const widen = (by: number) => {
    const next = Math.max(step, width + by * step);
    edit(
      (text) => setSashing(text, { width: lengthText(next, state.model.value), fabric: sashing.fabric }),
      `${words.sashing} ${lengthSaid(next)}.`,
    );
  };
  return (
    <Stepper
      what={`${words.sashing}, ${words.width}`}
      value=""
      typed={lengthField(width, (made) =>
        edit(
          (text) => setSashing(text, { width: made, fabric: sashing.fabric }),
          `${words.sashing} ${made}.`,
        ),
      )}
      less={() => widen(-1)}
      more={() => widen(1)}
    />
  );
}

/** The strips between blocks: their width, fabric or block, and what stands where they cross. */
export function Sashing() {
  const { sashing } = state.model.value.setting;
  if (sashing === null) return null;
  const fabric = clothOf(sashing.fabric);
  return (
    <>
      <h3>{words.sashing}</h3>
      <div class="row">
        {fabric === null ? null : <Swatch fabric={fabric} />}
        <SashWidth sashing={sashing} />
      </div>
      <Choices
        all={[
          ...ofItsStrips(sashing),
          ...ofItsStones(sashing),
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
