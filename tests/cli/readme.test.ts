import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { optionList } from "./option-list.ts";
import { crossgrainHere, emptyFolder, ROOT } from "./run.ts";

const DOCUMENTS = ["README.md", "src/spec/README.md", "src/cli/README.md"];
const [readme = "", spec = "", commands = ""] = DOCUMENTS.map((path) =>
  readFileSync(join(ROOT, path), "utf8"),
);

/** Fenced blocks of one language in a document. */
function blocks(language: string, text = readme): string[] {
  return [...text.matchAll(new RegExp(`^\`\`\`${language}\\n(.*?)^\`\`\`$`, "gms"))].map(
    ([, text = ""]) => text,
  );
}

/** A command of the README and what it is said to print. A line of three dots stands for any lines. */
interface Shown {
  command: string;
  words: string[];
  output: string;
}

const shown: Shown[] = [readme, spec, commands]
  .flatMap((document) => blocks("console", document))
  .map((text) => {
    const [first = "", ...rest] = text.split("\n");
    const command = first.replace(/^\$ /, "");
    const words = [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? "");
    return { command, words: words.slice(2), output: rest.join("\n") };
  });

test("the README is short, and names the documents that hold the rest", () => {
  expect(Buffer.byteLength(readme)).toBeLessThan(15_000);
  for (const text of [readme, spec, commands]) {
    const from = text === readme ? ROOT : join(ROOT, text === spec ? "src/spec" : "src/cli");
    const links = [...text.matchAll(/\]\((?!https?:)([^)#]+)(?:#[^)]*)?\)/g)].map(([, to = ""]) => to);
    expect(links.length).toBeGreaterThan(0);
    for (const to of links) expect(existsSync(join(from, to)), to).toBe(true);
  }
});

test("the README and its documents show every part of the tour", () => {
  expect(shown.map(({ words }) => words[0])).toEqual([
    "check",
    "check",
    "buy",
    "plan",
    "pieces",
    "new",
    "sizes",
    "buy",
  ]);
});

test.each(shown)("$command", async ({ words, output }) => {
  const folder = emptyFolder();
  // Results go into a folder of the test's own; the name printed is the one on the command line.
  const named = words.at(words.indexOf("--out") + 1) ?? "";
  const own = words.includes("--out")
    ? words.map((word) => (word === named ? join(folder, named) : word))
    : words;
  const ended = await crossgrainHere(own);
  const printed = `${ended.stdout}${ended.stderr}`.replaceAll(join(folder, named), named);
  const [start = "", ...later] = output.split(/^\.\.\.\n/m);
  expect(printed.startsWith(start) ? start : printed).toBe(start);
  let from = start.length;
  for (const part of later) {
    const at = part === "" ? printed.length : printed.indexOf(part, from);
    expect(at, `not printed: ${part}`).toBeGreaterThanOrEqual(0);
    from = at + part.length;
  }
  expect(from).toBe(printed.length);
});

test("the cut list shown is the file that is planned", () => {
  const file = readFileSync(join(ROOT, "fixtures", "cutlists", "tide-pool.yaml"), "utf8");
  expect(blocks("yaml")).toEqual([file]);
});

test("the list of options is that of the program", () => {
  const [, list] = /<!-- options:[^\n]*-->\n(.*?)\n<!-- \/options -->/s.exec(commands) ?? [];
  expect(list).toBe(optionList());
});

test("the picture is there", () => {
  const [, picture = ""] = /!\[[^\]]+\]\(([^)]+)\)/.exec(readme) ?? [];
  expect(existsSync(join(ROOT, picture))).toBe(true);
});

test("every picture is one the demo draws, and says in words what it shows", () => {
  const pictures = [
    ...[...readme.matchAll(/!\[([^\]]*)\]\(([^)]+)\)/g)].map(([, words = "", path = ""]) => ({
      words,
      path,
    })),
    ...[...readme.matchAll(/<img src="([^"]+)"[^>]* alt="([^"]*)"/g)].map(([, path = "", words = ""]) => ({
      words,
      path,
    })),
  ];
  expect(pictures.length).toBeGreaterThanOrEqual(4);
  for (const { words } of pictures) expect(words.length, words).toBeGreaterThan(30);
  // The first is the page, taken in a browser; the others are drawings.
  const drawings = pictures.filter(({ path }) => path !== "out/page.png");
  expect(drawings.length).toBe(pictures.length - 1);
  expect(readme.indexOf("out/page.png")).toBeLessThan(readme.search(/out\/[\w-]+\/[^/]+\.svg/));
  expect(readFileSync(join(ROOT, "out/page.png")).toString("latin1", 1, 4)).toBe("PNG");
  for (const { path } of drawings) {
    // The demo's test holds these folders to what the program draws today; `npm run demo` makes them anew.
    expect(path).toMatch(/^out\/(?:harbour-lights|winter-orchard|allotments)\/[^/]+\.svg$/);
    expect(existsSync(join(ROOT, path)), path).toBe(true);
  }
});
