import { about } from "./about.ts";
import { asking } from "./asking.ts";
import { arrange } from "./commands/arrange.ts";
import { buy } from "./commands/buy.ts";
import { check } from "./commands/check.ts";
import { compare } from "./commands/compare.ts";
import { goOn } from "./commands/go-on.ts";
import { newFile } from "./commands/new-file.ts";
import { page } from "./commands/page.ts";
import { picture } from "./commands/picture.ts";
import { pieces } from "./commands/pieces.ts";
import { plan } from "./commands/plan.ts";
import { savings } from "./commands/savings.ts";
import { schema } from "./commands/schema.ts";
import { sizes } from "./commands/sizes.ts";
import { stash } from "./commands/stash.ts";
import { comparing } from "./comparing.ts";
import { completion } from "./completion.ts";
import { man } from "./man.ts";
import { option, values } from "./option.ts";
import { options } from "./options.ts";
import { planning } from "./planning.ts";
import { program, unwritten } from "./program.ts";
import { read } from "./read.ts";
import { stopping } from "./stopping.ts";
import { table } from "./table.ts";

/** What the command line says: its help, what it tells while it works, what is wrong with a command. */
export const commandLine = {
  about,
  arrange,
  asking,
  buy,
  check,
  compare,
  comparing,
  completion,
  goOn,
  man,
  newFile,
  option,
  options,
  page,
  picture,
  pieces,
  plan,
  planning,
  program,
  read,
  savings,
  schema,
  sizes,
  stash,
  stopping,
  table,
  unwritten,
  values,
};
