import type { Words } from "../../types.ts";
import { about } from "./about.ts";
import { arrange } from "./arrange.ts";
import { asking } from "./asking.ts";
import { buy } from "./buy.ts";
import { check } from "./check.ts";
import { compare } from "./compare.ts";
import { comparing } from "./comparing.ts";
import { completion } from "./completion.ts";
import { goOn } from "./go-on.ts";
import { man } from "./man.ts";
import { newFile } from "./new-file.ts";
import { option, values } from "./option.ts";
import { options } from "./options.ts";
import { page } from "./page.ts";
import { picture } from "./picture.ts";
import { pieces } from "./pieces.ts";
import { plan } from "./plan.ts";
import { planning } from "./planning.ts";
import { program, unwritten } from "./program.ts";
import { read } from "./read.ts";
import { savings } from "./savings.ts";
import { schema } from "./schema.ts";
import { sizes } from "./sizes.ts";
import { stash } from "./stash.ts";
import { stopping } from "./stopping.ts";
import { table } from "./table.ts";

/** What the command line says: its help, what it tells while it works, what is wrong with a command. */
export const commandLine: Words["commandLine"] = {
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
