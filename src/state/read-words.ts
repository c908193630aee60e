import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { factUnreadable, workFabricUnknown, workFabricUnsaid } from "../diagnostics/work.ts";
import { nth } from "../length/nth.ts";
import type { LengthUnit } from "../length/types.ts";
import { readFact, type SaidFact } from "../spec/index.ts";

/** What is said of one fabric at one time. */
export interface SaidNow {
  fabric: string;
  facts: SaidFact[];
}

/** A fabric's name before a colon, and what is said of it. */
function splitFabric(text: string): { name: string | null; said: string } {
  const found = /^([^:]+):(.*)$/s.exec(text);
  return found === null ? { name: null, said: text } : { name: nth(found, 1).trim(), said: nth(found, 2) };
}

function fabricCalled(name: string, fabrics: readonly string[]): string | null {
  if (fabrics.includes(name)) return name;
  const alike = fabrics.filter((fabric) => fabric.toLowerCase() === name.toLowerCase());
  return alike.length === 1 ? nth(alike, 0) : null;
}

/**
 * Reads what is said on the command line: `ivory: cut to strip 6`, then more of the same fabric or of another. Facts of one
 * fabric are one entry: they speak of one diagram. Every problem is told.
 * @param fabrics names of the plan's fabrics; where there is one only it need not be named
 * @param unit measure of numbers written without one
 */
export function readWords(
  words: readonly string[],
  fabrics: readonly string[],
  unit: LengthUnit,
): Outcome<SaidNow[]> {
  const diagnostics: Diagnostic[] = [];
  const found: SaidNow[] = [];
  const nowhere = { path: "", at: null };
  let current = fabrics.length === 1 ? nth(fabrics, 0) : null;
  for (const text of words.flatMap((word) => word.split(";")).filter((each) => each.trim() !== "")) {
    const { name, said } = splitFabric(text);
    if (name !== null) {
      current = fabricCalled(name, fabrics);
      if (current === null) diagnostics.push(workFabricUnknown(nowhere, name, fabrics));
    }
    const written = said.trim();
    if (written === "" && name !== null) continue;
    const read = readFact(written, unit);
    if ("problem" in read) {
      diagnostics.push(factUnreadable(nowhere, written, read.problem));
      continue;
    }
    if (current === null) {
      // A fabric that nobody knows is told of once.
      if (name === null && diagnostics.every(({ code }) => code !== "WORK-FABRIC-UNKNOWN"))
        diagnostics.push(workFabricUnsaid(written, fabrics));
      continue;
    }
    const fact: SaidFact = { text: written, fact: read.value, path: "", at: null };
    const entry = found.find(({ fabric }) => fabric === current);
    if (entry === undefined) found.push({ fabric: current, facts: [fact] });
    else entry.facts.push(fact);
  }
  return { value: diagnostics.length > 0 ? null : found, diagnostics };
}
