import { useEffect, useState } from "preact/hooks";
import { readModel } from "../../edits/model.ts";
import { layOutQuilt, readSpecFile } from "../../planning.ts";
import { type Picture, pictureOf } from "../planner/picture.ts";
import { EMPTY_SHEET, STARTS, type Start } from "../starts.ts";
import { words } from "../words/index.ts";
import { LeftOff } from "./left-off.tsx";
import { openFromDisk, takeText } from "./opening.ts";
import { QuiltPicture } from "./quilt-picture.tsx";
import * as state from "./state.ts";
import { startTour } from "./tour.tsx";

/** The three quilts, laid out once the page stands; their places are kept free until then. */
function useTops(): ReadonlyMap<string, Picture> {
  const [tops, setTops] = useState<ReadonlyMap<string, Picture>>(new Map());
  useEffect(() => {
    let left = [...STARTS];
    const next = () => {
      const [start, ...rest] = left;
      if (start === undefined) return;
      left = rest;
      const spec = readSpecFile(start.text, start.key).value;
      const top = spec?.kind === "quilt" ? layOutQuilt(spec).value?.top : undefined;
      if (top !== undefined) setTops((before) => new Map([...before, [start.key, pictureOf(top)]]));
      window.setTimeout(next);
    };
    const timer = window.setTimeout(next);
    return () => window.clearTimeout(timer);
  }, []);
  return tops;
}

/** A quilt to begin with, as large on the shelf as it is beside the others. */
function ToBegin({ start, top }: { start: Start; top: Picture | undefined }) {
  return (
    <button
      type="button"
      class="pick"
      style={{ "--w": start.across, "--h": start.down }}
      onClick={() => takeText(start.text, null)}
    >
      <span class="shelfpic">
        {top === undefined ? null : (
          <QuiltPicture top={top} model={readModel(start.text)} prefix={`${start.key}-`} label="" tile={42} />
        )}
      </span>
      <span class="pt">{start.name}</span>
      <span class="ps">{words.sizeFacts(String(start.across), String(start.down))}</span>
      <span class="ps">{words.fabricCount(start.fabrics)}</span>
    </button>
  );
}

const SQUARES =
  Array.from({ length: 10 }, (_, i) => `M${4 * (i + 1)} 0V52`).join("") +
  Array.from({ length: 12 }, (_, i) => `M0 ${4 * (i + 1)}H44`).join("");

function EmptySheet() {
  return (
    <button
      type="button"
      class="pick"
      style={{ "--w": 44, "--h": 52 }}
      onClick={() => takeText(EMPTY_SHEET, null)}
    >
      <span class="shelfpic">
        <svg class="pic" viewBox="0 0 44 52" aria-hidden="true">
          <rect class="sheet" x=".2" y=".2" width="43.6" height="51.6" stroke-width=".4" />
          <path class="squares" stroke-width=".25" d={SQUARES} />
          <path class="pencil" d="M0 0L8 8M8 0V8H0" />
        </svg>
      </span>
      <span class="pt">{words.emptySheet}</span>
      {words.emptySheetFacts.map((line) => (
        <span key={line} class="ps">
          {line}
        </span>
      ))}
    </button>
  );
}

/** Three quilts and an empty sheet, all to one scale, standing on one line: size is understood without reading. */
export function FirstOpen() {
  const tops = useTops();
  return (
    <main id="work" class="tableau">
      <h1 class="heard">{words.startsLabel}</h1>
      <LeftOff />
      <div class="shelf">
        {STARTS.map((start) => (
          <ToBegin key={start.key} start={start} top={tops.get(start.key)} />
        ))}
        <EmptySheet />
      </div>
      <p class="scale">
        <span class="scaleline" />
        {words.scale}
      </p>
      <p class="said">{state.said.value}</p>
      <div class="row">
        <button
          type="button"
          class="act"
          onClick={() => {
            takeText(EMPTY_SHEET, null);
            startTour();
          }}
        >
          {words.tourStart}
        </button>
        <button type="button" class="act" onClick={() => void openFromDisk()}>
          {words.open}
        </button>
      </div>
    </main>
  );
}
