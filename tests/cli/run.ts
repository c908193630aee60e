import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { main } from "../../src/cli/main.ts";
import { english } from "../../src/words/index.ts";

export const ROOT = join(import.meta.dirname, "..", "..");

// The command line is tried as it is shipped: bundled.
const built = spawnSync(process.execPath, [join(ROOT, "bin", "setup.mjs")], { encoding: "utf8" });
if (built.status !== 0) throw new Error(built.stderr);

export interface Ended {
  code: number | null;
  stdout: string;
  stderr: string;
}

/** Runs the program in a process of its own, with no terminal, as a script would. */
export function crossgrain(
  words: readonly string[],
  { folder = ROOT, input = "", env = {} }: { folder?: string; input?: string; env?: NodeJS.ProcessEnv } = {},
): Ended {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(ROOT, "bin", "crossgrain.mjs"), ...words],
    { cwd: folder, input, encoding: "utf8", env: { ...process.env, ...env }, maxBuffer: 50_000_000 },
  );
  return { code: status, stdout, stderr };
}

/** Runs the program in this process: quicker, for what needs no process of its own. */
export async function crossgrainHere(words: readonly string[], folder = ROOT): Promise<Ended> {
  const stdout: string[] = [];
  const stderr: string[] = [];
  const code = await main(words, {
    out: (text) => void stdout.push(text),
    talk: (text) => void stderr.push(text),
    onTalk: (_style, text) => text,
    showsProgress: false,
    words: english,
    stdin: async function* () {},
    folder,
  });
  return { code, stdout: stdout.join(""), stderr: stderr.join("") };
}

/** A new empty folder, removed when the test is over. */
export function emptyFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "crossgrain-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A small cut list that is quickly planned. */
export const SMALL = `name: Tide pool
ruler: 1/8 in
all-fabrics:
  width: 43 in
  selvage: 1/2 in
fabrics:
  - name: Night sea
    pieces:
      - sky 4 1/2 square, 26
      - foam 2 1/2 square, 4
  - name: Chalk
    price: $12.00 per yd
    pieces:
      - sails 2 1/2 x 6 1/2, 40
`;
