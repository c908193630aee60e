import { spawn } from "node:child_process";
import { join } from "node:path";
import { expect, test } from "vitest";
import { ROOT } from "./run.ts";

/** A cut list whose proof takes far longer than anybody waits. */
const HARD = `name: Long search
all-fabrics: { width: 43 in, selvage: 1/2 in }
fabrics:
  - name: Sea
    pieces:
${Array.from({ length: 24 }, (_, i) => `      - p${i} ${2 + (i % 9)} ${1 + (i % 7)}/8 x ${3 + ((i * 5) % 11)} ${1 + ((i * 3) % 7)}/8, ${5 + ((i * 7) % 17)}`).join("\n")}
`;

/** Runs a long search and presses Ctrl-C each time one of the lines is told. */
async function stoppedAt(lines: readonly string[]) {
  const program = join(ROOT, "bin", "crossgrain.mjs");
  const words = [program, "plan", "-", "--json", "--budget", "900", "--style", "strips-3"];
  const child = spawn(process.execPath, words, { stdio: ["pipe", "pipe", "pipe"] });
  child.stdin.end(HARD);
  const left = [...lines];
  let [stdout, stderr] = ["", ""];
  child.stdout.on("data", (chunk) => (stdout += chunk));
  child.stderr.on("data", (chunk) => {
    stderr += chunk;
    while (left[0] !== undefined && stderr.includes(left[0])) {
      left.shift();
      child.kill("SIGINT");
    }
  });
  const code = await new Promise<number | null>((resolve) => child.on("close", resolve));
  return { code, stdout, stderr };
}

test("a first Ctrl-C keeps the best plan so far", async () => {
  const { code, stdout, stderr } = await stoppedAt(["Ctrl-C keeps the best plan so far"]);
  expect(stderr).toContain("Stopping: the best plan so far is kept.");
  expect(stderr).toContain("The search for Sea was ended by the clock");
  expect(code).toBe(0);
  const plan = JSON.parse(stdout) as { fabrics: { pieces: object[]; bound: { lengthProven: boolean } }[] };
  expect(plan.fabrics[0]?.pieces).toHaveLength(23);
  expect(plan.fabrics[0]?.bound.lengthProven).toBe(false);
});
