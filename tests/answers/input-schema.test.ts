import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { publishedSchema, STARTERS } from "../../src/index.ts";
import { readSpecFile } from "../../src/spec/read/read-spec-file.ts";
import { ROOT } from "../cli/run.ts";
import { faults, schemaOf } from "./schemas.ts";

const read = (path: string) => readFileSync(`${ROOT}/fixtures/${path}`, "utf8");
const files = ["cutlists", "quilts", "trials"].flatMap((folder) =>
  readdirSync(`${ROOT}/fixtures/${folder}`)
    .filter((name) => name.endsWith(".yaml"))
    .map((name) => `${folder}/${name}`),
);
const bad = readdirSync(`${ROOT}/fixtures/bad`);
const against = (text: string) => faults("schema.json", parse(text, { logLevel: "silent" }));

test("the schema that is packed is the one the program prints", () => {
  expect(schemaOf("schema.json")).toEqual(JSON.parse(JSON.stringify(publishedSchema())));
});

describe("what the program reads, the schema lets pass", () => {
  test.each(files)("%s", (file) => {
    const text = read(file);
    if (readSpecFile(text, file).value !== null) expect(against(text)).toEqual([]);
  });

  test.each(STARTERS.map(({ name, text }) => [name, text]))("starter %s", (_, text) => {
    expect(against(text)).toEqual([]);
  });
});

/** Every path in a value that leads to a group of keys the schema knows by name. */
function groups(value: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (Array.isArray(value)) return value.flatMap((each, i) => groups(each, [...path, i]));
  if (typeof value !== "object" || value === null) return [];
  const own = /^(blocks|cells|colourways|methods|roles|[^/]*colours)$/.test(String(path.at(-1)))
    ? []
    : [path];
  return [...own, ...Object.entries(value).flatMap(([key, each]) => groups(each, [...path, key]))];
}

function withKey(value: unknown, [step, ...rest]: readonly (string | number)[], key: string): unknown {
  if (step === undefined) return { ...(value as object), [key]: 1 };
  if (Array.isArray(value)) return value.with(Number(step), withKey(value[Number(step)], rest, key));
  const group = value as Record<string, unknown>;
  return { ...group, [step]: withKey(group[step], rest, key) };
}

describe("a misspelt key is one error", () => {
  const rich = [
    "cutlists/rock-pool.yaml",
    "quilts/nine-stars.yaml",
    "quilts/allotments.yaml",
    "quilts/lighthouse-sampler.yaml",
  ];
  test.each(rich)("%s", (file) => {
    const value = parse(read(file)) as unknown;
    let tried = 0;
    for (const path of groups(value)) {
      // The parts of a unit have names of their own, and so has every unit in a cell.
      if (path.includes("cells") || path.includes("cell") || path.includes("colourways")) continue;
      if (path.includes("methods") || path.includes("roles")) continue;
      tried += 1;
      const found = faults("schema.json", withKey(value, path, "widht"));
      expect(found, path.join(".")).toHaveLength(1);
      expect(found[0]).toContain("widht");
    }
    expect(tried).toBeGreaterThan(3);
  });

  test("two of them are two", () => {
    const found = against(read("bad/KEY-UNKNOWN-misspelt/input.yaml"));
    expect(found.filter((each) => each.includes("additional"))).toHaveLength(2);
  });
});

test("files with faults of form are refused, and none brings the check down", () => {
  const refused = bad.filter((name) => {
    try {
      return against(read(`bad/${name}/input.yaml`)).length > 0;
    } catch {
      return true; // no YAML at all
    }
  });
  for (const name of ["FIELD-MISSING-fabrics", "FIELD-TYPE-pieces-as-text", "FIELD-MISSING-name"])
    expect(refused).toContain(name);
  expect(refused.length).toBeGreaterThan(12);
});
