import { isSeq, parseDocument, stringify } from "yaml";
import type { Ticks } from "../../length/types.ts";
import { WORK_FORMAT } from "../key-words.ts";
import { WORK_VERSION } from "../schema/work-schema.ts";
import type { Planned } from "../work-types.ts";

/** Exact: a tick is 0.0015625 mm. */
const exact = (ticks: Ticks): string => `${ticks / 640} mm`;

/** How the plan was made, as the file has it; without what is as usual. */
function plannedValue(planned: Planned): object {
  const { kits, style, prefer, thorough, fatQuarters, width, bolt, ruler, budget, cloth } = planned;
  return {
    ...(kits === 1 ? {} : { kits }),
    ...(style === null ? {} : { style }),
    ...(prefer === null ? {} : { prefer }),
    ...(thorough ? { thorough } : {}),
    ...(fatQuarters ? { "fat-quarters": true } : {}),
    ...(width === null ? {} : { width: exact(width) }),
    ...(bolt === null ? {} : { bolt: exact(bolt) }),
    ...(ruler === null ? {} : { ruler }),
    ...(budget === null ? {} : { budget }),
    ...(cloth.length === 0
      ? {}
      : {
          cloth: cloth.map(({ fabric, name, across, along, count }) => ({
            fabric,
            name,
            size: `${exact(across)} x ${exact(along)}`,
            count,
          })),
        }),
  };
}

/**
 * The file as it begins: nothing is said yet.
 * @param about comment lines at its top, for whoever opens it
 */
export function beginWork(planned: Planned, about = ""): string {
  const value = plannedValue(planned);
  const how = Object.keys(value).length === 0 ? "" : stringify({ planned: value });
  const head = about === "" ? "" : `${about}\n`;
  return `${head}format: ${WORK_FORMAT}\nversion: ${WORK_VERSION}\n${how}said:\n`;
}

/** What is put into the file at one time. */
export interface NewEntry {
  fabric: string;
  plan: string;
  facts: readonly string[];
}

/** The text with an entry more at its end. Everything else stays as it is written, comments too. */
export function addEntry(text: string, { fabric, plan, facts }: NewEntry): string {
  const entry = { fabric, plan, facts: [...facts] };
  const lines = stringify([entry], { lineWidth: 0 })
    .trimEnd()
    .split("\n")
    .map((line) => `  ${line}`);
  const cut = `${text.trimEnd()}\n${lines.join("\n")}\n`;
  const wanted = [...entriesOf(text), entry];
  if (JSON.stringify(entriesOf(cut)) === JSON.stringify(wanted)) return cut;
  // The file is not laid out as this program does it: the parser's own printing keeps the comments.
  const document = parseDocument(text);
  if (isSeq(document.get("said"))) document.addIn(["said"], entry);
  else document.set("said", [entry]);
  return document.toString({ lineWidth: 0 });
}

/** The text without its last entry; null where there is none. */
export function withoutLastEntry(text: string): string | null {
  const count = entriesOf(text).length;
  if (count === 0) return null;
  const document = parseDocument(text);
  document.deleteIn(["said", count - 1]);
  if (count === 1) document.set("said", null);
  return document.toString({ lineWidth: 0 });
}

/**
 * The text as it was before an entry was put in, and all that came after it: to the letter where this program laid the
 * file out and nobody has written into it since.
 * @param index of the entry, from 0
 */
export function beforeEntry(text: string, index: number): string {
  const all = entriesOf(text);
  if (index >= all.length) return text;
  const document = parseDocument(text);
  const said = document.get("said");
  const item = isSeq(said) ? (said.items[index] as { range?: readonly number[] | null }) : null;
  const begins = item?.range?.[0];
  if (begins !== undefined) {
    const line = text.lastIndexOf("\n", begins) + 1;
    const cut = text.slice(0, line);
    const isOurs = !text.slice(line).includes("#");
    if (isOurs && JSON.stringify(entriesOf(cut)) === JSON.stringify(all.slice(0, index))) return cut;
  }
  for (let i = all.length - 1; i >= index; i--) document.deleteIn(["said", i]);
  if (index === 0) document.set("said", null);
  return document.toString({ lineWidth: 0 });
}

function entriesOf(text: string): unknown[] {
  const document = parseDocument(text, { logLevel: "error" });
  if (document.errors.length > 0) return [];
  const said: unknown = (document.toJS() as { said?: unknown } | null)?.said;
  return Array.isArray(said) ? said : [];
}
