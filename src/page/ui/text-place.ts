import { batch, signal } from "@preact/signals";
import { unitOn } from "../../edits/block-edits.ts";
import type { QuiltPlace } from "../../edits/places.ts";
import * as state from "./state.ts";

/** A line of the text to be shown, counted from 1; with a number of its own, so that the same can be asked twice. */
export const lineWanted = signal<{ line: number; ask: number } | null>(null);

export function showLine(line: number): void {
  state.textOpen.value = true;
  lineWanted.value = { line, ask: (lineWanted.value?.ask ?? 0) + 1 };
}

/** What is in hand on the drawing, as a place the text speaks of. */
export function placeInHand(): QuiltPlace | null {
  const sheet = state.sheet.value;
  if (state.region.value === "fabric") {
    const index = state.model.value.fabrics.findIndex(({ name }) => name === state.opened.value);
    return index < 0 ? null : { kind: "fabric", index };
  }
  if (state.region.value !== "draw") return null;
  if (sheet !== "quilt") {
    const block = state.model.value.blocks.find(({ key }) => key === sheet.block);
    const unit = block === undefined ? null : unitOn(block, state.square.value);
    return { kind: "square", block: sheet.block, ...(unit ?? state.square.value) };
  }
  if (state.borderInHand.value !== null) return { kind: "border", index: state.borderInHand.value };
  return state.placed.value === null ? null : { kind: "placed", ...state.placed.value };
}

/** Takes in hand on the drawing what the text speaks of. */
export function takePlace(place: QuiltPlace): void {
  batch(() => {
    switch (place.kind) {
      case "fabric": {
        const name = state.model.value.fabrics[place.index]?.name ?? null;
        if (state.region.value === "fabric") state.opened.value = name;
        return;
      }
      case "border":
        state.placed.value = null;
        state.borderInHand.value = place.index;
        if (state.region.value === "draw") state.sheet.value = "quilt";
        return;
      case "placed":
        state.borderInHand.value = null;
        state.placed.value = { row: place.row, column: place.column };
        if (state.region.value === "draw") state.sheet.value = "quilt";
        return;
      case "square":
        if (state.region.value === "draw") state.sheet.value = { block: place.block };
        state.square.value = { row: place.row, column: place.column };
    }
  });
}
