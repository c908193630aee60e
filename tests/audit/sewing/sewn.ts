import { auditSewing, givenUpIn, type Sewing } from "../../../src/audit/sew/index.ts";
import { listAll } from "../../../src/pipeline.ts";
import { readSpecFile } from "../../../src/spec/read/read-spec-file.ts";
import { allSaid } from "../../support/in-words.ts";

/** A quilt file read and listed, ready to be sewn on paper; null for one that holds no design or is declined. */
export function sewingOf(text: string, fileName = "quilt.yaml"): Sewing | null {
  const read = readSpecFile(text, fileName);
  if (read.value === null || read.value.kind === "cut-list") return null;
  const { value, diagnostics } = listAll(read.value);
  if (value === null || value.making === null || value.top === null) return null;
  const fabrics = value.cutLists.map(({ fabric, pieces }) => ({
    name: fabric.name,
    print: fabric.print,
    pieces,
  }));
  const { ruler } = read.value;
  return {
    fabrics,
    making: value.making,
    top: value.top,
    kits: 1,
    mark: ruler.mark,
    givenUp: givenUpIn(diagnostics),
  };
}

/** The same, which must be there. */
export function mustSew(text: string): Sewing {
  const sewing = sewingOf(text);
  if (sewing === null) {
    const read = readSpecFile(text, "quilt.yaml");
    const listed = read.value === null ? null : listAll(read.value);
    const said = [...read.diagnostics, ...(listed?.diagnostics ?? [])].filter(
      ({ severity }) => severity === "error",
    );
    throw new Error(
      `${allSaid(said)
        .map(({ message }) => message)
        .join("; ")}\n${text}`,
    );
  }
  return sewing;
}

/** Faults of a quilt, each with the kind and method of the unit it speaks of. */
export function faultsByUnit(sewing: Sewing): { unit: string; fault: string }[] {
  const names = new Map<string, string>();
  for (const { name, kind, method, heaps } of sewing.making.units) {
    const said = `${kind}, ${method}`;
    for (const each of [name, ...heaps.map((heap) => heap.name)])
      names.set(each, names.has(each) && names.get(each) !== said ? `${names.get(each)} or ${said}` : said);
  }
  return auditSewing(sewing).map((fault) => {
    const word = /^[A-Z]+\d*[a-z]*/.exec(fault)?.[0] ?? "";
    return { unit: names.get(word) ?? "the quilt", fault };
  });
}
