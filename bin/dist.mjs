// Makes dist/, which is what the package holds: the bundles made small, the page's parts, declarations and schemas.
// npm runs it before it packs. Nothing in the clone itself uses dist/.
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { rollup } from "rollup";
import { dts } from "rollup-plugin-dts";
import { bundle, fontFiles } from "./build.mjs";
import { pageParts } from "./build-page.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const target = join(root, "dist");

/** The doors that other programs import, each with its declarations. */
const DOORS = { index: "src/index.ts", planning: "src/planning.ts", engine: "src/engine/index.ts" };

/**
 * Declarations of the doors, holding what can be reached through them and nothing else. The words are rolled up twice:
 * what a language must be able to say is a third of all declarations, and who uses a door only hands a language on.
 */
async function declarations() {
  const beside = join(root, ".build", "declarations");
  rmSync(beside, { recursive: true, force: true });
  mkdirSync(beside, { recursive: true });
  const sources = Object.entries(DOORS).map(([name, path]) => [name, join(root, path)]);
  const whole = await rolledUp(Object.fromEntries(sources));
  for (const [name, text] of Object.entries(whole)) writeFileSync(join(beside, name), withWordsClosed(text));
  const rolled = await rolledUp(
    Object.fromEntries(Object.keys(DOORS).map((name) => [name, join(beside, `${name}.d.ts`)])),
  );
  rmSync(beside, { recursive: true });
  // A level of four spaces weighs as much as the words of some comments.
  return Object.fromEntries(
    Object.entries(rolled).map(([name, text]) => [
      name,
      text.replace(/^(?: {4})+/gm, (indent) => "\t".repeat(indent.length / 4)),
    ]),
  );
}

async function rolledUp(input) {
  const rolled = await rollup({
    input,
    plugins: [dts({ tsconfig: join(root, "tsconfig.json") })],
    external: (name) => !name.startsWith(".") && !name.startsWith("/"),
    onwarn(warning) {
      // Types that two doors share lie in a file of their own, which is as it should be.
      if (warning.message.includes("private shared type exports")) return;
      throw new Error(`declarations: ${warning.message}`);
    },
  });
  const { output } = await rolled.generate({ format: "es", chunkFileNames: "shared-[hash].d.ts" });
  return Object.fromEntries(output.map(({ fileName, code }) => [fileName, code]));
}

const CLOSED_WORDS = `declare const said: unique symbol;
/** Everything a language says, as \`wordsFor\` loads it. It is handed on to whatever prints. */
interface Words {
    /** The language's tag, as \`Intl\` takes it. */
    language: Language;
    /** Files to start from. */
    starters: readonly Starter[];
    readonly [said]: true;
}
`;

/** The declarations with the type of the words as something that is handed on and not looked into. */
function withWordsClosed(text) {
  return text.replace(/^interface Words \{\n[\s\S]*?\n\}\n/m, CLOSED_WORDS);
}

rmSync(target, { recursive: true, force: true });
mkdirSync(target, { recursive: true });
for (const { path, contents } of await bundle(target, true))
  writeFileSync(join(target, basename(path)), contents);
for (const [name, text] of Object.entries({ ...(await pageParts(root, 11)), ...(await declarations()) }))
  writeFileSync(join(target, name), text);
mkdirSync(join(target, "fonts"));
for (const [name, bytes] of Object.entries(fontFiles())) writeFileSync(join(target, "fonts", name), bytes);
mkdirSync(join(target, "schemas"));
for (const name of readdirSync(join(root, "src/schemas"))) {
  const text = readFileSync(join(root, "src/schemas", name), "utf8");
  writeFileSync(
    join(target, "schemas", name),
    name.endsWith(".json") ? JSON.stringify(JSON.parse(text)) : text,
  );
}
