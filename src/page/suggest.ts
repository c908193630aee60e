import { EIGHTH_INCH_RULER, findUnitKind, QUARTER_CENTIMETRE_RULER } from "../planning.ts";
import { lengthText } from "./document/block-edits.ts";
import { setMethod, setPrint, setStyle } from "./document/fabric-edits.ts";
import { readModel, ticksOf } from "./document/model.ts";
import { setSashing, widenBorder } from "./document/quilt-edits.ts";
import { withValue } from "./document/text-edit.ts";
import type { Amounts } from "./planner/amounts.ts";
import { words } from "./words/en.ts";

/** A change that may buy less: what it is, and the text with it made. */
export interface Idea {
  key: string;
  label: string;
  text: string;
}

/**
 * Changes to a quilt that are worth planning: other methods for its units, strips cut once more, borders a little
 * narrower or cut in one piece, narrower sashes, a print allowed to turn.
 */
export function ideasFor(text: string): Idea[] {
  const model = readModel(text);
  const ruler = ["in", "yd"].includes(model.unit) ? EIGHTH_INCH_RULER : QUARTER_CENTIMETRE_RULER;
  const ideas: Idea[] = [];
  const add = (key: string, label: string, made: string): void => {
    if (made !== text) ideas.push({ key, label, text: made });
  };
  const say = words.suggestion;
  if (!/^style:/m.test(text)) add("style", say.style, setStyle(text, "strips-3"));
  const kinds = new Set(model.blocks.flatMap(({ units }) => units.map(({ cell }) => cell.kind)));
  for (const kind of kinds)
    for (const { name } of findUnitKind(kind)?.methods ?? [])
      if (name !== "templates")
        add(`method ${kind} ${name}`, say.method(kind, name), setMethod(text, kind, name));
  model.borders.forEach(({ width, fabric, block }, i) => {
    const now = ticksOf(width, model.unit);
    if (now === null || block !== "") return;
    for (const marks of [-2, -4]) {
      const made = widenBorder(text, i, marks, ruler.mark);
      const said = readModel(made).borders[i]?.width ?? "";
      add(`border ${i} ${marks}`, say.narrower(`${i + 1}`, said), made);
    }
    add(
      `border ${i} lengthwise`,
      say.lengthwise(`${i + 1} (${fabric})`),
      withValue(text, ["borders", i, "cut"], "lengthwise"),
    );
  });
  const { sashing } = model.setting;
  const sash = sashing === null ? null : ticksOf(sashing.width, model.unit);
  if (sashing !== null && sash !== null && sash > 4 * ruler.mark) {
    const width = lengthText(sash - 2 * ruler.mark, model);
    add("sash", say.sash(width), setSashing(text, { width, fabric: sashing.fabric }));
  }
  for (const { print, name, index } of model.fabrics)
    if (print !== "none") add(`free ${name}`, say.free(name), setPrint(text, index, "none"));
  return ideas;
}

/** What an idea changes: money where every fabric has a price, else cloth; below zero saves. */
export function saving(
  now: Amounts,
  then: Amounts,
): { cost: number | null; length: number; fabrics: string[] } {
  const of = (name: string) => now.fabrics.find(({ fabric }) => fabric === name);
  let [cost, length]: [number | null, number] = [0, 0];
  const fabrics: string[] = [];
  for (const after of then.fabrics) {
    const before = of(after.fabric);
    const more = (after.length ?? 0) - (before?.length ?? 0);
    length += more;
    if (more !== 0) fabrics.push(after.fabric);
    cost =
      cost === null || after.cost === null || before?.cost == null ? null : cost + after.cost - before.cost;
  }
  return { cost, length, fabrics };
}
