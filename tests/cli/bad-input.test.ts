import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { NO_PLAN_CODES } from "../../src/diagnostics/planning.ts";
import { oneIn } from "../support/sweep.ts";
import { crossgrain, crossgrainHere, emptyFolder, ROOT, SMALL } from "./run.ts";

interface Bad {
  name: string;
  /** The file's content, or a function that prepares the folder. */
  file: string | Buffer;
  code: number;
  /** All of these must be told. */
  says: readonly (string | RegExp)[];
}

const pieces = (line: string, more = "") => `name: Tide pool
fabrics:
  - name: Night sea
${more}    pieces:
      - ${line}
`;

const BAD: readonly Bad[] = [
  {
    name: "an unknown key, with the nearest valid one",
    file: pieces("sky 2 x 4, 3", "    selvege: 1/2 in\n"),
    code: 1,
    says: ["quilt.yaml:4:5", "KEY-UNKNOWN", "selvege", "selvage"],
  },
  {
    name: "a missing field",
    file: "name: Tide pool\nfabrics:\n  - name: Night sea\n    pieces:\n      - size: 2 x 4\n",
    code: 1,
    says: ["quilt.yaml:5:", "FIELD-MISSING", "count"],
  },
  { name: "a negative size", file: pieces("sky -2 x 4, 3"), code: 1, says: ["quilt.yaml:5:"] },
  {
    name: "a size of zero",
    file: pieces("sky 0 x 4, 3"),
    code: 1,
    says: ["SIZE-NOT-POSITIVE", "quilt.yaml:5:"],
  },
  { name: "a count of 0", file: pieces("sky 2 x 4, 0"), code: 1, says: ["COUNT-NOT-WHOLE", "quilt.yaml:5:"] },
  { name: "a count of 1.5", file: pieces("sky 2 x 4, 1.5"), code: 1, says: ["COUNT-NOT-WHOLE", "1.5"] },
  {
    name: "a piece wider than the fabric in every allowed turn",
    file: pieces("{ label: banner, size: 50 x 60, count: 1 }", "    width: 43 in\n    selvage: 1/2 in\n"),
    code: 3,
    says: ["PIECE-TOO-WIDE", "banner", "50 x 60 in", "42 in", "8 in", /join|lengthwise/, "wider fabric"],
  },
  {
    name: "selvages wider than the fabric",
    file: pieces("sky 2 x 4, 3", "    width: 10 in\n    selvage: 6 in\n"),
    code: 1,
    says: ["SELVAGES-TOO-WIDE"],
  },
  {
    name: "mixed measures in one size",
    file: pieces("{ size: 2 in x 4 cm, count: 3 }"),
    code: 1,
    says: ["MEASURES-MIXED"],
  },
  {
    name: "two fabrics of one name",
    file: `${pieces("sky 2 x 4, 3")}  - name: Night sea\n    pieces:\n      - sky 2 x 4, 3\n`,
    code: 1,
    says: ["NAME-REPEATED", "Night sea"],
  },
  {
    name: "a length that is none",
    file: pieces("sky 2 x 4, 3", "    width: 2 1/x\n"),
    code: 1,
    says: ["LENGTH-UNREADABLE", "2 1/x", "quilt.yaml:4:"],
  },
  { name: "an empty file", file: "", code: 1, says: ["FILE-EMPTY"] },
  {
    name: "5 MB",
    file: SMALL + "# more\n".repeat(750_000),
    code: 1,
    says: ["FILE-TOO-LARGE", "more than 1 MB"],
  },
  {
    name: "a binary file",
    file: Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 255]),
    code: 1,
    says: ["FILE-NOT-TEXT"],
  },
  {
    name: "text in an old encoding",
    file: Buffer.from("name: Caf\u00e9\nfabrics: []\n", "latin1"),
    code: 1,
    says: ["FILE-NOT-TEXT", "UTF-8"],
  },
  {
    name: "a bomb of YAML aliases",
    file: `a: &a [x, x, x, x, x, x, x, x, x]\nb: &b [*a, *a, *a, *a, *a, *a, *a]\nc: &c [*b, *b, *b, *b, *b, *b]\nd: [*c, *c, *c, *c, *c, *c, *c]\n`,
    code: 1,
    says: ["ALIAS-USED"],
  },
  {
    name: "no YAML at all",
    file: "name: [Tide pool\n",
    code: 1,
    says: ["YAML-SYNTAX", /quilt\.yaml:\d+:\d+/],
  },
];

describe("a file with faults is told what, where and what would help", () => {
  test.each(BAD)("$name", async ({ file, code, says }) => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "quilt.yaml"), file);
    const ended = await crossgrainHere(["plan", "quilt.yaml"], folder);
    for (const part of says) expect(ended.stderr).toMatch(part);
    expect(ended.code).toBe(code);
    expect(ended.stdout).toBe("");
    expect(ended.stderr).not.toMatch(/\n\s+at |node:internal|\.ts:\d/);
    expect(readdirSync(folder)).toEqual(["quilt.yaml"]);
  });
});

describe("every file of fixtures/bad", async () => {
  const bad = join(ROOT, "fixtures", "bad");
  test.each(oneIn(4, readdirSync(bad)))(
    "%s ends `check`, or `buy` where cloth is short, with the right code",
    async (name) => {
      const expected = JSON.parse(readFileSync(join(bad, name, "expected.json"), "utf8")) as {
        code: string;
        severity: string;
      }[];
      const errors = expected.filter(({ severity }) => severity === "error").map(({ code }) => code);
      const noPlan = errors.length > 0 && errors.every((code) => NO_PLAN_CODES.includes(code));
      const input = readdirSync(join(bad, name)).find((file) => file.startsWith("input.")) ?? "";
      // Too little cloth for a layout shows only when one is looked for.
      const laid = errors.some((code) => code === "STOCK-SHORT" || code === "PIECE-LONGER-THAN-BOLT");
      const command = laid ? "buy" : "check";
      const ended = await crossgrainHere([command, join(bad, name, input)]);
      expect(ended.code).toBe(errors.length === 0 ? 0 : noPlan ? 3 : 1);
      for (const code of errors) expect(ended.stderr).toContain(code);
    },
  );
});

describe("files that cannot be read or written", () => {
  test("a missing file, with one of a like name", () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "harbour.yaml"), SMALL);
    const ended = crossgrain(["plan", "harbor.yaml"], { folder });
    expect(ended.code).toBe(1);
    expect(ended.stderr).toMatch("harbor.yaml cannot be read: there is no such file.");
    expect(ended.stderr).toMatch("Did you mean harbour.yaml?");
  });

  test("a folder in the file's place", async () => {
    const folder = emptyFolder();
    const ended = await crossgrainHere(["check", "."], folder);
    expect(ended.code).toBe(1);
    expect(ended.stderr).toMatch(". cannot be read: it is a folder.");
  });

  test("a file without an end", () => {
    if (!existsSync("/dev/zero")) return;
    const ended = crossgrain(["check", "/dev/zero"]);
    expect(ended.code).toBe(1);
    expect(ended.stderr).toMatch("FILE-TOO-LARGE");
  });

  test("an out folder that is a file", async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "quilt.yaml"), SMALL);
    writeFileSync(join(folder, "taken"), "mine");
    const ended = await crossgrainHere(["plan", "quilt.yaml", "--out", "taken/plans"], folder);
    expect(ended.code).toBe(1);
    expect(ended.stderr).toMatch("Nothing was written");
    expect(ended.stderr).toMatch("part of its path is a file");
    expect(readdirSync(folder).sort()).toEqual(["quilt.yaml", "taken"]);
    expect(readFileSync(join(folder, "taken"), "utf8")).toBe("mine");
  });

  test("an out folder without permission to write", async () => {
    // To the superuser no folder is closed.
    if (process.getuid?.() === 0 || process.platform === "win32") return;
    const folder = emptyFolder();
    writeFileSync(join(folder, "quilt.yaml"), SMALL);
    mkdirSync(join(folder, "closed"), { mode: 0o555 });
    const ended = await crossgrainHere(["plan", "quilt.yaml", "--out", "closed/plan"], folder);
    expect(ended.code).toBe(1);
    expect(ended.stderr).toMatch("no permission to write");
    expect(readdirSync(join(folder, "closed"))).toEqual([]);
  });

  test("a folder of the name of a result leaves the old result untouched", async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "quilt.yaml"), SMALL);
    mkdirSync(join(folder, "result", "steps.txt"), { recursive: true });
    writeFileSync(join(folder, "result", "plan.json"), "old");
    const ended = await crossgrainHere(["plan", "quilt.yaml", "--out", "result"], folder);
    expect(ended.code).toBe(1);
    expect(ended.stderr).toMatch("Nothing was written");
    expect(readdirSync(join(folder, "result")).sort()).toEqual(["plan.json", "steps.txt"]);
    expect(readFileSync(join(folder, "result", "plan.json"), "utf8")).toBe("old");
  });
});
