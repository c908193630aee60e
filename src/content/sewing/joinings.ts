import type { JoinName } from "../../making/types.ts";
import type { Pressed } from "../../words/en/sewing/blocks.ts";
import type { Words } from "../../words/index.ts";

/** One joining as it is told; `number` is its row's (or column's), empty where it is none. */
export interface ToldJoin {
  makes: string;
  number: string;
  line: "row" | "column";
  names: string[];
  parts: string;
  press: Pressed;
  size: string;
}

/** Which row or column is made; without a number where it is something else. */
export function lineOf(makes: JoinName): { line: "row" | "column"; number: string } {
  return makes.is === "line"
    ? { line: makes.line, number: String(makes.number) }
    : { line: "row", number: "" };
}

/** Joinings in order, each on a line; rows of the same parts together, with how each is pressed. */
export function joiningLines(joins: readonly ToldJoin[], words: Words): string[] {
  const groups = new Map<string, ToldJoin[]>();
  for (const [index, join] of joins.entries()) {
    const { number, parts, size, press } = join;
    const own = press.all === "" ? press.sentence : press.all;
    const key = number === "" ? `${index}` : JSON.stringify([parts, size, own]);
    groups.set(key, [...(groups.get(key) ?? []), join]);
  }
  return [...groups.values()].map((group) => {
    const [first] = group as [ToldJoin];
    const makes =
      first.number === ""
        ? first.makes
        : words.blocks.lines(
            group.map(({ number }) => number),
            first.line,
          );
    return `[ ] ${words.blocks.join(makes, first.parts, pressOfAll(group, words), first.size, group.length > 1)}`;
  });
}

/** One sentence for rows that are pressed in one way or in several. */
function pressOfAll(group: readonly ToldJoin[], words: Words): string {
  const [first] = group as [ToldJoin];
  const ways = new Map<string, string[]>();
  for (const { press, number } of group) ways.set(press.way, [...(ways.get(press.way) ?? []), number]);
  if (ways.size < 2 || first.press.all === "") return first.press.sentence;
  const told = [...ways].map(([way, rows]) => ({ way, rows }));
  return words.blocks.pressIn(first.press.all, told, first.line);
}
