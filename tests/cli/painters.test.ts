import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import pixelmatch from "pixelmatch";
import { PNG } from "pngjs";
import { expect, test } from "vitest";
import { LEFT_OUT } from "../support/sweep.ts";
import { crossgrain, emptyFolder, SMALL } from "./run.ts";

/** Node with packages that are nowhere to be found, as on a machine nobody has built them for. */
function without(...names: readonly string[]): NodeJS.ProcessEnv {
  const hooks = `export async function resolve(name, context, next) {
    if (${JSON.stringify(names)}.includes(name)) throw new Error("no " + name);
    return next(name, context);
  }`;
  const register = `import { register } from "node:module";
    register("data:text/javascript,${encodeURIComponent(hooks)}");`;
  return { NODE_OPTIONS: `--import "data:text/javascript,${encodeURIComponent(register)}"` };
}

function planned(name: string, env: NodeJS.ProcessEnv, folder: string) {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, "small.yaml"), SMALL);
  const ended = crossgrain(["plan", "small.yaml", "--out", name, "--png", "300"], { folder, env });
  const names = readdirSync(join(folder, name));
  return { ...ended, names, pictures: names.filter((each) => each.endsWith(".png")) };
}

test.skipIf(LEFT_OUT)("without the painter of this machine the portable one draws the same pictures", () => {
  const folder = emptyFolder();
  const usual = planned("usual", {}, folder);
  const portable = planned("portable", without("@resvg/resvg-js"), folder);
  expect([usual.code, portable.code]).toEqual([0, 0]);
  expect(portable.stderr).not.toContain("NO-PICTURES");
  expect(portable.pictures).toEqual(usual.pictures);
  expect(usual.pictures.length).toBeGreaterThan(0);
  for (const picture of usual.pictures) {
    const [a, b] = ["usual", "portable"].map((name) =>
      PNG.sync.read(readFileSync(join(folder, name, picture))),
    );
    if (a === undefined || b === undefined) throw new Error(picture);
    expect([b.width, b.height]).toEqual([a.width, a.height]);
    expect(pixelmatch(a.data, b.data, undefined, a.width, a.height, { threshold: 0.05 })).toBe(0);
  }
});

test("where neither runs the plan is written all the same, and it is said", () => {
  const folder = emptyFolder();
  const { code, stderr, names, pictures } = planned(
    "made",
    without("@resvg/resvg-js", "@resvg/resvg-wasm"),
    folder,
  );
  expect(code).toBe(0);
  expect(stderr).toContain("NO-PICTURES");
  expect(stderr).toContain("No PNG pictures were made");
  expect(pictures).toEqual([]);
  expect(names).toContain("plan.json");
  const drawing = names.find((name) => name.endsWith(".svg")) ?? "";
  const one = crossgrain(["picture", join("made", drawing)], {
    folder,
    env: without("@resvg/resvg-js", "@resvg/resvg-wasm"),
  });
  expect(one.code).toBe(1);
  expect(one.stderr).toContain("No PNG pictures were made");
});
