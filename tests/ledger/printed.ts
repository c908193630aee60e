/** Reading printed text: lines joined again, numbers, names. Shares no code with what printed it. */

/** A sentence of the handout, and how far it is set in. */
export interface Line {
  text: string;
  indent: number;
}

/** What the ledger finds wrong, or cannot read. */
export type Fault = string;

export const NUM = String.raw`\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?`;

/** The value of a printed number: `4 1/2`, `3/8`, `6.75`. */
export function amountOf(printed: string): number {
  const [whole = "", part] = printed.trim().split(" ");
  if (part !== undefined) return Number(whole) + amountOf(part);
  const [over = "", under] = whole.split("/");
  return under === undefined ? Number(over) : Number(over) / Number(under);
}

export const same = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;

/** Whether the line goes on from the one before: the printer breaks a line only where the next word has no room. */
function goesOn(last: string, start: Line, raw: string, widest: number): boolean {
  const indent = raw.length - raw.trimStart().length;
  const box = start.text.startsWith("[ ]") ? 4 : 2;
  const [word = ""] = raw.trim().split(" ");
  if (/One corner after another:$|\(make \d+\):$/.test(start.text)) return false;
  return indent === start.indent + box && last.length + 1 + word.length > widest;
}

/** The lines of a text with those that were broken joined again; empty lines stay. */
export function unwrapped(text: string, widest: number): Line[] {
  const lines: Line[] = [];
  let last = "";
  for (const raw of text.split("\n")) {
    const own = { text: raw.trim(), indent: raw.length - raw.trimStart().length };
    const start = lines.at(-1);
    if (start !== undefined && last !== "" && own.text !== "" && goesOn(last, start, raw, widest))
      start.text += ` ${own.text}`;
    else lines.push(own);
    last = raw;
  }
  return lines;
}

/** Numbers in `1, 3 and 5` or `1 to 4`. */
export function numbersIn(listed: string): number[] {
  return listed.split(/, | and /).flatMap((each) => {
    const [from = 0, to] = each.split(" to ").map(Number);
    return to === undefined ? [from] : Array.from({ length: to - from + 1 }, (_, i) => from + i);
  });
}

/** Parts of a list at its top level: commas inside brackets part nothing. */
export function listed(text: string): string[] {
  const parts: string[] = [];
  let depth = 0;
  let own = "";
  const breaks = /^(, | and )/;
  for (let i = 0; i < text.length; i += 1) {
    if (text[i] === "(") depth += 1;
    if (text[i] === ")") depth -= 1;
    const at = depth === 0 ? breaks.exec(text.slice(i)) : null;
    if (at === null) own += text[i];
    else {
      parts.push(own);
      own = "";
      i += (at[0]?.length ?? 1) - 1;
    }
  }
  return [...parts, own];
}
