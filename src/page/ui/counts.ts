import * as state from "./state.ts";

/** Columns and rows of blocks as the file counts them: on point every second row stands between. */
export function counts(): { across: number; down: number } {
  const { rows, layout } = state.model.value.setting;
  const across = Math.max(0, ...rows.map((row) => row.length));
  return { across, down: layout === "on point" ? Math.ceil(rows.length / 2) : rows.length };
}
