import { defineCommand, EXIT } from "../command.ts";
import { budget, json, prefer, style, thorough } from "../options.ts";
import { planFile } from "../planning.ts";

export const buy = defineCommand({
  name: "buy",
  summary: "the shopping list: how much of each fabric to ask for",
  about: "",
  arguments: [{ name: "<file>", help: "the cut list, YAML or JSON" }],
  options: { json, style, prefer, thorough, budget },
  examples: ["buy fixtures/cutlists/harbour-lights.yaml"],
  async run([file = ""], values, io) {
    const made = await planFile(file, values, io);
    if ("code" in made) return made.code;
    const { buyJson, buyList } = await import("../../index.ts");
    io.out(values.json ? buyJson(made.plan) : buyList(made.plan));
    return EXIT.done;
  },
});
