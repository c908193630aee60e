import { setLayout, setSashing } from "../../../edits/quilt-edits.ts";
import { ringsOf } from "../../../edits/ring-edits.ts";
import { standOnEnd } from "../../../edits/row-edits.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import { counts, onEnd } from "../counts.ts";
import { Faults } from "../faults.tsx";
import { Group } from "../group.tsx";
import { Pile } from "../pile.tsx";
import { saidOnPaper } from "../said-here.tsx";
import * as state from "../state.ts";
import { countTyped, Stepper } from "../steps.tsx";
import { Beds } from "./beds.tsx";
import { Edges } from "./edges.tsx";
import { PlacedHand } from "./placed-hand.tsx";
import { sizeTo } from "./quilt-handles.tsx";
import { QuiltPaper } from "./quilt-paper.tsx";

const MOST_BLOCKS = 100;

function sizeTyped(wish: string, take: (count: number) => void): void {
  const count = countTyped(wish, MOST_BLOCKS);
  if (count !== null) take(count);
}

function Size() {
  const { top } = state.laid.value;
  const { across, down } = counts();
  return (
    <section class="leaf size" aria-labelledby="size-title">
      <h3 id="size-title">{words.size}</h3>
      {top === null ? null : <Beds top={top} />}
      <div class="row">
        <Stepper
          what={words.across}
          value=""
          typed={{
            now: String(across),
            after: words.across,
            take: (wish) => sizeTyped(wish, (n) => sizeTo(n, down)),
          }}
          less={() => sizeTo(across - 1, down)}
          more={() => sizeTo(across + 1, down)}
        />
        <Stepper
          what={words.down}
          value=""
          typed={{
            now: String(down),
            after: words.down,
            take: (wish) => sizeTyped(wish, (n) => sizeTo(across, n)),
          }}
          less={() => sizeTo(across, down - 1)}
          more={() => sizeTo(across, down + 1)}
        />
      </div>
      <p class="hint">{words.hints.size}</p>
    </section>
  );
}

/** Blocks straight or on point. Sashing is not worked out on point: it goes, and that is said. */
function layOut(layout: Parameters<typeof setLayout>[1], triangles: string): void {
  const sashed = layout !== "straight" && state.model.value.setting.sashing !== null;
  edit(
    (text) => setLayout(sashed ? setSashing(text, null) : text, layout, triangles),
    sashed ? `${words.layouts[layout]}. ${words.noSashingOnPoint}` : words.layouts[layout],
  );
}

/** The whole quilt: blocks set, turned and swapped, its edges and its size. */
export function QuiltSheet() {
  const { top, stale } = state.laid.value;
  const model = state.model.value;
  const first = model.fabrics[state.firstFabric.value]?.name ?? "";
  return (
    <div class="spread set">
      <section class="leaf work1" aria-label={words.theQuilt}>
        <h2>{words.theQuilt}</h2>
        <div class="row">
          <Group name="choice" label={words.layoutLabel}>
            {(["straight", "on point"] as const).map((layout) => (
              <button
                key={layout}
                type="button"
                class="pickword"
                aria-pressed={model.setting.layout === layout}
                onClick={() => layOut(layout, first)}
              >
                {words.layouts[layout]}
              </button>
            ))}
          </Group>
          {model.setting.layout !== "straight" ? null : (
            <button
              type="button"
              class="act"
              aria-pressed={onEnd()}
              onClick={() => edit((text) => standOnEnd(text, !onEnd()), words.inColumnsSaid(!onEnd()))}
            >
              {words.inColumns}
            </button>
          )}
          {model.blocks.map((block) => (
            <button
              key={block.key}
              type="button"
              class="act"
              onClick={() => (state.sheet.value = { block: block.key })}
            >
              {whereOf(block)}
            </button>
          ))}
        </div>
        <div class={stale ? "stale" : ""}>{top === null ? null : <QuiltPaper top={top} />}</div>
        <p class="said" aria-hidden="true">
          {saidOnPaper() || words.helpQuilt}
        </p>
        <Faults />
      </section>
      <section class="leaf hand" aria-label={words.inHandFirst}>
        <PlacedHand />
        <Edges />
      </section>
      <div class="side">
        <Pile />
        <Size />
      </div>
    </div>
  );
}

/** A block with how often it is in the rows, or the ring it stands in. */
function whereOf({ key, name }: { key: string; name: string }): string {
  const count = state.model.value.setting.rows.flat().filter(({ block }) => block === key).length;
  const [ring] = ringsOf(state.text.value, key);
  return count === 0 && ring !== undefined ? `${name}, ${words.inRing[ring]}` : words.blockIn(name, count);
}
