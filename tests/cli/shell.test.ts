import { spawnSync } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { commands } from "../../src/cli/commands/index.ts";
import { english } from "../../src/words/index.ts";
import { firstOf } from "../support/sweep.ts";
import { crossgrain, crossgrainHere, emptyFolder, ROOT } from "./run.ts";

const has = (program: string, ...words: string[]) => spawnSync(program, words).status === 0;

/** A folder with nothing in it but a way to call the program by its name. */
function shellFolder(): {
  folder: string;
  run: (line: string) => { code: number | null; stdout: string; stderr: string };
} {
  const folder = emptyFolder();
  const home = join(folder, "home");
  const bin = join(folder, "bin");
  for (const each of [home, bin]) mkdirSync(each);
  const program = join(bin, "crossgrain");
  writeFileSync(program, `#!/bin/sh\nexec "${process.execPath}" "${ROOT}/bin/crossgrain.mjs" "$@"\n`);
  chmodSync(program, 0o755);
  const work = join(folder, "work");
  mkdirSync(work);
  const env = { ...process.env, HOME: home, PATH: `${bin}:${process.env.PATH}` };
  return {
    folder: work,
    run(line) {
      const { status, stdout, stderr } = spawnSync("bash", ["-c", line], {
        cwd: work,
        env,
        encoding: "utf8",
      });
      return { code: status, stdout, stderr };
    },
  };
}

/** Those that plan take seconds each: they are tried where all is asked for, as .ci/run does. */
const PLANNING = ["plan", "go-on", "buy", "pieces", "compare", "arrange", "savings", "picture", "stash"];
const all = process.env.PACKAGE === "all";

const withExamples = commands(english).filter(({ examples }) => examples.length > 0);

describe.skipIf(!has("bash", "-c", "true"))("examples of --help work in an empty folder", () => {
  test("every command has some", () => {
    expect(withExamples.length).toBe(commands(english).length);
  });

  const tried = withExamples.filter(({ name }) => all || !PLANNING.includes(name));
  test.each(tried.map(({ name, examples }) => [name, examples] as const))("%s", (_, examples) => {
    const { run } = shellFolder();
    for (const example of firstOf(examples, 1)) {
      const { code, stderr } = run(`crossgrain ${example}`);
      expect(code, `${example}: ${stderr}`).toBe(0);
    }
  });
});

describe("completion and manual come from the table of options", () => {
  test.each(["bash", "zsh", "fish", "man"])("%s names every command and option", async (shell) => {
    const { stdout, code } = await crossgrainHere(["completion", shell]);
    expect(code).toBe(0);
    const text = stdout.replaceAll("\\-", "-");
    for (const { name, options } of commands(english)) {
      expect(text).toContain(name);
      for (const { flags } of Object.values(options)) {
        const flag = flags.split(" ")[0] ?? "";
        expect(text).toContain(shell === "fish" ? `-l ${flag.slice(2)}` : flag);
      }
    }
  });

  test("an unknown shell is wrong usage", async () => {
    expect((await crossgrainHere(["completion", "dos"])).code).toBe(2);
  });

  test.skipIf(!has("bash", "-c", "true"))("bash completes commands, options and their words", async () => {
    const { folder, run } = shellFolder();
    writeFileSync(join(folder, "completion.bash"), (await crossgrainHere(["completion", "bash"])).stdout);
    const complete = (...words: string[]) => {
      const list = words.map((word) => `"${word}"`).join(" ");
      const { stdout, stderr } = run(
        `source completion.bash; COMP_WORDS=(${list}); COMP_CWORD=${words.length - 1}; _crossgrain; echo "\${COMPREPLY[*]}"`,
      );
      expect(stderr).toBe("");
      return stdout.trim().split(" ");
    };
    expect(complete("crossgrain", "com")).toEqual(["compare", "completion"]);
    expect(complete("crossgrain", "plan", "--pa")).toEqual(["--paper"]);
    expect(complete("crossgrain", "plan", "--paper", "l")).toEqual(["letter"]);
    expect(complete("crossgrain", "new", "sam")).toEqual(["sampler"]);
    expect(complete("crossgrain", "plan", "compl")).toEqual(["completion.bash"]);
  });

  test.skipIf(!has("zsh", "-c", "true"))("zsh can read its own", async () => {
    const { stdout } = await crossgrainHere(["completion", "zsh"]);
    expect(spawnSync("zsh", ["-n"], { input: stdout, encoding: "utf8" }).stderr).toBe("");
  });

  test.skipIf(!has("fish", "--version"))("fish can read its own", async () => {
    const { stdout } = await crossgrainHere(["completion", "fish"]);
    expect(spawnSync("fish", ["--no-execute"], { input: stdout, encoding: "utf8" }).stderr).toBe("");
  });

  test("no line of the manual is lost to its macros", async () => {
    const { stdout } = await crossgrainHere(["completion", "man"]);
    const macros = new Set(
      stdout.split("\n").flatMap((line) => (/^\.(\S+)/.exec(line)?.[1] ?? []) as string[]),
    );
    expect([...macros].sort()).toEqual(["B", "EE", "EX", "I", "PP", "SH", "SS", "TH", "TP"]);
  });

  test.skipIf(!has("groff", "--version"))("groff sets the manual without a warning", async () => {
    const { stdout } = await crossgrainHere(["completion", "man"]);
    expect(spawnSync("groff", ["-man", "-ww", "-Tutf8"], { input: stdout, encoding: "utf8" }).stderr).toBe(
      "",
    );
  });
});

test("-h and -V are short for help and version", async () => {
  const long = await crossgrainHere(["--help"]);
  expect((await crossgrainHere(["-h"])).stdout).toBe(long.stdout);
  expect((await crossgrainHere(["plan", "-h"])).stdout).toBe(
    (await crossgrainHere(["plan", "--help"])).stdout,
  );
  expect((await crossgrainHere(["-V"])).stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
});

test("what `new` writes names the schema for editors, and is planned as it is", async () => {
  const { stdout } = await crossgrainHere(["new", "cut-list"]);
  expect(stdout).toMatch(/^# yaml-language-server: \$schema=crossgrain\.schema\.json\n/);
  expect(crossgrain(["check", "-"], { input: stdout }).code).toBe(0);
});

test.skipIf(!existsSync("/dev/full"))("output that cannot be written is told, and ends with 70", () => {
  const program = join(ROOT, "bin", "crossgrain.mjs");
  const { status, stderr } = spawnSync(
    "sh",
    ["-c", `"${process.execPath}" "${program}" schema > /dev/full`],
    {
      encoding: "utf8",
    },
  );
  expect(status).toBe(70);
  expect(stderr).toContain("the output could not be written: the disk is full (ENOSPC)");
});
