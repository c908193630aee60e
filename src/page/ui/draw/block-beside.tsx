import type { BlockModel } from "../../../edits/model.ts";
import { patchesOf } from "../../../edits/unit-patches.ts";
import { words } from "../../words/index.ts";
import * as state from "../state.ts";
import { unitSaid } from "../unit-said.ts";
import { BlockPicture, blockSize } from "./cloth.tsx";
import { squareName } from "./laying.ts";

/** Squares named of one kind that does not fit. */
const MOST_TOLD = 8;

/** What lies in a shape it does not come in, each kind with its reason and its squares. */
export function Unfit({ block }: { block: BlockModel }) {
  const model = state.model.value;
  const unfit = block.units.filter((unit) => patchesOf(unit, block, model) === null);
  const kinds = [...new Set(unfit.map(({ cell }) => cell.kind))];
  if (kinds.length === 0) return null;
  return (
    <ul class="unfits" role="status">
      {kinds.map((kind) => {
        const squares = unfit.filter(({ cell }) => cell.kind === kind).map(squareName);
        const told = squares.length > MOST_TOLD ? [...squares.slice(0, MOST_TOLD), "…"] : squares;
        return (
          <li key={kind}>
            <b>{told.join(", ")}</b> {words.doesNotFit(kind, unitSaid(kind))}
          </li>
        );
      })}
    </ul>
  );
}

/** The block by itself, nine times, as in a quilt: a pinwheel is seen to be one. */
export function NineTogether({ block }: { block: BlockModel }) {
  const [w, h] = blockSize(block);
  const model = state.model.value;
  return (
    <figure class="nine">
      <figcaption>{words.nineTogether}</figcaption>
      <div class="ninegrid" style={{ aspectRatio: `${w} / ${h}` }}>
        {Array.from({ length: 9 }, (_, i) => (
          <BlockPicture key={i} block={block} model={model} />
        ))}
      </div>
    </figure>
  );
}
