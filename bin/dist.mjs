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

/** Declarations of the doors, holding what can be reached through them and nothing else. */
async function declarations() {
  const rolled = await rollup({
    input: Object.fromEntries(Object.entries(DOORS).map(([name, path]) => [name, join(root, path)])),
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
