import type { Command } from "../command.ts";
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
export const commands: readonly Command[] = [
  plan,
  goOn,
  buy,
  pieces,
  compare,
  arrange,
  savings,
  picture,
  page,
  check,
  newFile,
  sizes,
  stash,
  schema,
  completionOf(() => commands),
];
