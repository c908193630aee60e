import { useState } from "preact/hooks";
import { blockNamed } from "../../../edits/block-edits.ts";
import { type BlockModel, readModel } from "../../../edits/model.ts";
import { type Grid, withGrid } from "../../../edits/motif-edits.ts";
import { type MotifWays, motifTurned, motifWays, readSpecFile } from "../../../planning.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import * as state from "../state.ts";
import { Label } from "../steps.tsx";
import { BlockPicture } from "./cloth.tsx";

/** The text the ways were drawn for, so that a picture is not drawn twice. */
interface Drawn {
  text: string;
  key: string;
  found: MotifWays | null;
}

let drawn: Drawn = { text: "", key: "", found: null };

function waysOf(text: string, key: string): MotifWays | null {
  if (drawn.text === text && drawn.key === key) return drawn.found;
  const spec = readSpecFile(text, "").value;
  const found = spec?.kind === "quilt" ? motifWays(spec, key, 1) : null;
  drawn = { text, key, found };
  return found;
}

function turnOne(key: string, index: number): void {
  const spec = readSpecFile(state.text.value, "").value;
  const grid = spec?.kind === "quilt" ? motifTurned(spec, key, index) : null;
  if (grid !== null) edit((text) => withGrid(text, grid), words.motifOne(index + 1));
}

function Way({ name, grid, block }: { name: string; grid: Grid; block: BlockModel }) {
  const text = state.text.value;
  const made = withGrid(text, grid);
  const model = readModel(made);
  const turned = blockNamed(model, block.key);
  if (turned === null) return null;
  return (
    <button
      type="button"
      aria-pressed={made === text}
      onClick={() => edit((now) => withGrid(now, grid), `${words.motifs}: ${name}.`)}
    >
      <BlockPicture block={turned} model={model} />
      {name}
    </button>
  );
}

/** The like parts of a block turned as blocks are: every way as a picture, side by side, and each part alone. */
export function MotifLeaf({ block }: { block: BlockModel }) {
  const [open, setOpen] = useState(false);
  if (block.empties.length > 0 || block.units.length < 2) return null;
  const found = open ? waysOf(state.text.value, block.key) : null;
  return (
    <section class={found === null ? "leaf motifs" : "leaf motifs open"} aria-label={words.motifs}>
      <Label pressed={open} onClick={() => setOpen(!open)}>
        {words.motifsTry}
      </Label>
      {open ? null : <p class="quiet">{words.motifsWhat}</p>}
      {open && found === null ? <p class="quiet">{words.noMotifs}</p> : null}
      {found === null ? null : <Ways found={found} block={block} />}
    </section>
  );
}

function Ways({ found, block }: { found: MotifWays; block: BlockModel }) {
  const { motifs, ways } = found;
  return (
    <>
      <p class="quiet">{words.motifsHelp(motifs.places.length)}</p>
      <div class="four ways" role="group" aria-label={words.motifs}>
        {ways.map(({ key, grid }) => (
          <Way key={key} name={words.motifWays[key] ?? key} grid={grid} block={block} />
        ))}
      </div>
      <div class="row" role="group" aria-label={words.motifsTry}>
        {motifs.places.slice(0, 16).map((_, i) => (
          <button
            key={i}
            type="button"
            class="act"
            aria-label={words.motifOne(i + 1)}
            onClick={() => turnOne(block.key, i)}
          >
            {i + 1}
          </button>
        ))}
      </div>
    </>
  );
}
