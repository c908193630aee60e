import type { Words } from "../../words/index.ts";
import type { Command } from "../command.ts";
import { language } from "../options.ts";
import { arrange } from "./arrange.ts";
import { buy } from "./buy.ts";
import { check } from "./check.ts";
import { compare } from "./compare.ts";
import { completionOf } from "./completion.ts";
import { goOn } from "./go-on.ts";
import { newFile } from "./new.ts";
import { page } from "./page.ts";
import { picture } from "./picture.ts";
import { pieces } from "./pieces.ts";
import { plan } from "./plan.ts";
import { savings } from "./savings.ts";
import { schema } from "./schema.ts";
import { sizes } from "./sizes.ts";
import { stash } from "./stash.ts";

/** Every command, in the order of the help. A new one is a file of its own and a line here. */
export const commands = (words: Words): readonly Command[] =>
  commandsOf(words).map((command) => ({
    ...command,
    options: { ...command.options, language: language(words) },
  }));

const commandsOf = (words: Words): readonly Command[] => [
  plan(words),
  goOn(words),
  buy(words),
  pieces(words),
  compare(words),
  arrange(words),
  savings(words),
  picture(words),
  page(words),
  check(words),
  newFile(words),
  sizes(words),
  stash(words),
  schema(words),
  completionOf(() => commands(words), words),
];
