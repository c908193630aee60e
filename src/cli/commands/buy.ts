import { fatQuarters, kits, stash, usable } from "../asking.ts";
import { besideFiles } from "../beside-files.ts";
import { defineCommand, EXIT } from "../command.ts";
import { budget, json, prefer, style, thorough } from "../options.ts";
import { planFile } from "../planning.ts";

export const buy = defineCommand({
  name: "buy",
  summary: "the shopping list: how much of each fabric to ask for",
  about: "",
  arguments: [{ name: "<file>", help: "the cut list, YAML or JSON" }],
  options: { json, style, prefer, thorough, budget, stash, fatQuarters, kits, usable },
  examples: ["buy fixtures/cutlists/harbour-lights.yaml"],
  async run([file = ""], values, io) {
    const beside = { ...values, kits: values.kits ?? 1 };
    const made = await planFile(file, values, io, beside);
    if ("code" in made) return made.code;
    const { buyJson, buyList } = await import("../../index.ts");
    const lists = [buyList(made.plan), ...Object.values(await besideFiles(made, beside, io))];
    io.out(values.json ? buyJson(made.plan) : lists.join("\n"));
    return EXIT.done;
  },
});
