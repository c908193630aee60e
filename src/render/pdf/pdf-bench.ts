import type { Block } from "../book/content.ts";
import { drawBenchSteps, drawBlock } from "./pdf-blocks.ts";
import { drawing, heightOfDrawing, heightOn, newPage, type Sheet } from "./sheet.ts";
import { drawTable } from "./tables.ts";

/** A diagram set smaller than this share of its size is hard to read. */
const LEAST = 0.72;
const AIR = 12;

/**
 * A diagram, its pieces and its steps, and what follows them. All on one page where they fit, the diagram a little
 * smaller if need be; else the steps together on the page after, so that none stands alone.
 */
export function drawBench(
  sheet: Sheet,
  scratch: Sheet,
  bench: Block & { kind: "bench" },
  after: readonly Block[],
): void {
  const running = sheet.running.at(-1) ?? "";
  const page = sheet.bottom - sheet.top;
  const high = Math.min(heightOfDrawing(sheet, bench.svg), page) + 10;
  const pieces = heightOn(scratch, (on) => drawTable(on, bench.table));
  const work = heightOn(scratch, (on) => {
    drawBenchSteps(on, bench.groups);
    for (const block of after) drawBlock(on, block);
  });
  const room = sheet.bottom - sheet.y - AIR;
  const left = room - pieces - work;
  const share = left >= high ? 1 : left / high;
  const together = share >= LEAST;
  const whole = { width: sheet.width, height: together ? Math.min(left, high) - 10 : page - AIR };
  drawing(sheet, bench.svg, whole);
  if (!together && high + pieces > room) newPage(sheet, running);
  drawTable(sheet, bench.table);
  if (!together && sheet.y + work > sheet.bottom && work <= page) newPage(sheet, running);
  drawBenchSteps(sheet, bench.groups);
  for (const block of after) drawBlock(sheet, block);
}
