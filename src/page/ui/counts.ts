import * as state from "./state.ts";

/** Whether the rows of the file stand on end, as columns. */
export const onEnd = (): boolean => state.model.value.setting.turn % 180 !== 0;

/** Columns and rows of blocks as they lie in the quilt: on point every second row stands between. */
export function counts(): { across: number; down: number } {
  const { rows, layout } = state.model.value.setting;
  const long = Math.max(0, ...rows.map((row) => row.length));
  const many = layout === "on point" ? Math.ceil(rows.length / 2) : rows.length;
  return onEnd() ? { across: many, down: long } : { across: long, down: many };
}
