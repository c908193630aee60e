import type { Fault, Line } from "./printed.ts";

/*
 * Units sewn alike stand in one table, and the steps below call each bag by the head of its column. Here every row is
 * read back into a unit of its own, with its own bags and counts, as whoever sews it reads it.
 */

/** A row by the heads of its columns. */
type Row = Map<string, string>;

const TITLE = /^\[ \] (U\d+(?:, U\d+)* and U\d+): (.*): make (\d+) in all$/;
const NAMES = /^((?:U\d+, )*U\d+(?: and U\d+)?): (.*)$/;
const EACH_SET = /^Each set gives (\d+) units\.$/;

const cells = (line: Line | undefined): string[] => (line?.text ?? "").split(/ {2,}/);
const namesIn = (text: string): string[] => text.split(/, | and /);

/** The row's own words for the heads: bags, and its heaps by name and count. */
function inRow(text: string, row: Row): string {
  let told = text;
  for (const [head, cell] of [...row].sort(([a], [b]) => b.length - a.length)) {
    if (["Unit", "Make", "Sets", "Over"].includes(head)) continue;
    if (!head.startsWith("In ")) told = told.replaceAll(new RegExp(`\\b${head}\\b`, "g"), cell);
    else {
      const [name = "", count = ""] = cell.split(": ");
      const heap = head.slice(3);
      told = told.replace(`For ${heap}:`, `${name} (make ${count}):`).replaceAll(heap, `${name} (${count})`);
    }
  }
  // Of a half or a quarter the brackets hold the fabric and how it lies.
  return told.replaceAll(/(a (?:half|quarter) of [A-Z/]+ \([^()]*)\) \(/g, "$1, ");
}

/** What is printed of a set in the words of a unit that stands alone. */
function ownSets(line: Line, row: Row): Line {
  const at = EACH_SET.exec(line.text);
  if (at === null) return line;
  const over = Number(row.get("Over") ?? 0);
  const rest = over === 0 ? "" : `; ${over} ${over === 1 ? "is" : "are"} over`;
  const sets = Number(row.get("Sets"));
  return {
    ...line,
    text: `Make ${sets} ${sets === 1 ? "set" : "sets"}: ${at[1]} units from ${sets === 1 ? "it" : "each"}${rest}.`,
  };
}

function unitLines(name: string, rest: string, row: Row, steps: readonly Line[], indent: number): Line[] {
  const over = Number(row.get("Over") ?? 0);
  const single = over > 0 && !steps.some(({ text }) => EACH_SET.test(text));
  const sets = Number(row.get("Make")) + over;
  const told = steps.flatMap((line): Line[] => {
    const own = NAMES.exec(line.text);
    if (own !== null && !namesIn(own[1] ?? "").includes(name)) return [];
    return [ownSets({ ...line, text: inRow(own?.[2] ?? line.text, row) }, row)];
  });
  return [
    { text: `[ ] ${name}: ${rest}: make ${row.get("Make")}`, indent },
    ...(single ? [{ text: `Make ${sets}; ${over} over.`, indent: indent + 4 }] : []),
    ...told,
  ];
}

/** The units of a handout with each row of a table as a unit of its own. */
export function withoutTables(lines: readonly Line[], faults: Fault[]): Line[] {
  const made: Line[] = [];
  for (let i = 0; i < lines.length; ) {
    const line = lines[i]!;
    const title = TITLE.exec(line.text);
    i += 1;
    if (title === null) {
      made.push(line);
      continue;
    }
    const names = namesIn(title[1] ?? "");
    const heads = cells(lines[i]);
    const rows = names.map((_, n): Row => {
      const own = cells(lines[i + 1 + n]);
      if (own.length !== heads.length) faults.push(`${own.length} cells below ${heads.length} heads`);
      return new Map(heads.map((head, c) => [head, own[c] ?? ""]));
    });
    i += 1 + names.length;
    const steps: Line[] = [];
    while (i < lines.length && lines[i]!.indent > line.indent) steps.push(lines[i++]!);
    const all = rows.reduce((sum, row) => sum + Number(row.get("Make")), 0);
    if (all !== Number(title[3])) faults.push(`${all} units in the table, ${title[3]} in its title`);
    if (heads[0] !== "Unit" || rows.some((row, n) => row.get("Unit") !== names[n]))
      faults.push(`the rows are not ${title[1]}`);
    names.forEach((name, n) => {
      made.push(...unitLines(name, title[2] ?? "", rows[n]!, steps, line.indent));
    });
  }
  return made;
}
