import { rowOf } from "../../lines/table-lines.ts";
import type { Step, StepGroup } from "../content.ts";
import { sentence, typeset } from "../typeset.ts";

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
  return { id, title: sentence(title), light: true, details: [], parts: [], where: "", warnings: [] };
}
