import type { Plan } from "../../plan/types.ts";
import { english } from "../../words/index.ts";
import { drawSewing, drawUnitSteps } from "../svg/index.ts";
import type { SewingDrawing } from "../svg/making-drawings.ts";

import { amountLines, onFoundationAndBlocks, unitLines } from "../text/making.ts";
import { borderLines } from "../text/making-borders.ts";
import { finishingLines } from "../text/making-finishing.ts";
import { pressingLines } from "../text/making-pressing.ts";

import { topLines } from "../text/rows.ts";
import { rowOf } from "../text/table-lines.ts";
import type { Block, Section, Step, StepGroup } from "./content.ts";
import { sentence, typeset } from "./typeset.ts";
import { bookWords } from "./words.ts";

/** Begins a line that is ticked off. */
const TICK = "[ ] ";

/** Groups of told lines: a title, then lines to tick with what belongs to each under it. */
export function stepGroups(lines: readonly string[], id: string): StepGroup[] {
  const groups: StepGroup[] = [];
  let fresh = true;
  let number = 0;
  for (const line of lines) {
    const text = line.trim();
    const group = groups.at(-1);
    const row = rowOf(line);
    if (row !== null) addRow(group?.steps.at(-1), row);
    else if (text === "") fresh = true;
    else if (group === undefined || fresh) {
      groups.push({ title: sentence(text), steps: [] });
      fresh = false;
    } else if (text.startsWith(TICK)) {
      number += 1;
      group.steps.push(step(`${id}-${number}`, text.slice(TICK.length)));
    } else if (group.steps.length > 0) group.steps.at(-1)?.details.push(sentence(text));
    else {
      // Said before the first joining of the group: it is done like one.
      number += 1;
      group.steps.push(step(`${id}-${number}`, text));
    }
  }
  return groups;
}

/** Letters from which a cell is told in as much room as there is. */
const WORDY = 8;

/** A row of the table of a step; the first one says what the columns are. */
function addRow(to: Step | undefined, row: readonly string[]): void {
  if (to === undefined) return;
  if (to.table === undefined) {
    const columns = row.map((heading) => ({
      heading: sentence(heading),
      align: "left" as const,
      wordy: false,
    }));
    to.table = { caption: to.title, captionSeen: false, columns, rows: [], summed: false, ticks: [] };
    return;
  }
  for (const [c, column] of to.table.columns.entries())
    column.wordy = column.wordy === true || (row[c]?.length ?? 0) > WORDY;
  to.table.rows.push(row.map((text) => ({ text: typeset(text), notes: [], swatch: null })));
}

function step(id: string, title: string): Step {
  return { id, title: sentence(title), details: [], parts: [], where: "", warnings: [] };
}

/** Units, blocks, rows, borders and pressing. Null for a plain cut list. */
export function sewingSection(plan: Plan): Section | null {
  const { making, top } = plan;
  if (making === undefined || top === null) return null;
  const { pressing } = making;
  // Thread is told where it is bought.
  const told = amountLines(making, plan, english).slice(0, 2);
  const parts = [unitLines, onFoundationAndBlocks, topLines, borderLines];
  const lines = parts.flatMap((told) => [...told(making, plan, english), ""]);
  const groups = stepGroups(lines, "sewing");
  const drawn = drawSewing(top, making, plan.fabrics, plan.ruler);
  const pictures = (...names: SewingDrawing[]): Block[] =>
    names.flatMap((name) =>
      drawn.filter((each) => each.name === name).map(({ svg }) => ({ kind: "picture", svg })),
    );
  const unitSteps: Block[] = drawUnitSteps(top, making, plan.fabrics, plan.ruler).map((svg) => ({
    kind: "picture",
    svg,
  }));
  const pressed: Block[] =
    pressing === null
      ? []
      : [
          { kind: "heading", text: english.making.pressTitle },
          {
            kind: "list",
            items: pressingLines(pressing, plan, english).map((line) => sentence(line.trim())),
          },
          ...pictures("pressing"),
        ];
  return {
    id: "sewing",
    over: "",
    title: bookWords.sewing.title,
    swatch: null,
    running: bookWords.sewing.title,
    newSheet: true,
    titledByDrawing: false,
    blocks: [
      { kind: "text", text: bookWords.sewing.lead, tone: "lead" },
      { kind: "list", items: told.map(sentence) },
      ...(groups.length === 0 ? [] : [{ kind: "steps" as const, groups }]),
      ...unitSteps,
      ...pictures("blocks", "assembly", "borders"),
      ...pressed,
    ],
  };
}

/** From the finished top to the quilt: backing, wadding, binding and what else is left. */
export function finishingSection(plan: Plan): Section | null {
  const { making, top } = plan;
  if (making === undefined) return null;
  const groups = stepGroups(finishingLines(making, plan, english), "finishing");
  const drawn = top === null ? [] : drawSewing(top, making, plan.fabrics, plan.ruler);
  const picture = drawn
    .filter(({ name }) => name === "finishing")
    .map(({ svg }) => ({ kind: "picture" as const, svg }));
  return {
    id: "finishing",
    over: "",
    title: english.finishing.title,
    swatch: null,
    running: bookWords.sewing.title,
    newSheet: false,
    titledByDrawing: false,
    // The section's title says what the group's would.
    blocks: [{ kind: "steps", groups: groups.map(({ steps }) => ({ title: "", steps })) }, ...picture],
  };
}
