import type { DiagnosticWords } from "../../diagnostics.ts";
import { choices } from "./choices.ts";
import { classes } from "./class.ts";
import { cloth } from "./cloth.ts";
import { fields } from "./fields.ts";
import { files } from "./files.ts";
import { folders } from "./folders.ts";
import { foundation } from "./foundation.ts";
import { pictures } from "./pictures.ts";
import { planning } from "./planning.ts";
import { quilt } from "./quilt.ts";
import { quiltFile } from "./quilt-file.ts";
import { quiltPlan } from "./quilt-plan.ts";
import { reading } from "./reading.ts";
import { shapes } from "./shapes.ts";
import { stash } from "./stash.ts";
import { work } from "./work.ts";

/** What is wrong, or worth knowing, subject by subject. */
export const diagnostics: DiagnosticWords = {
  ...choices,
  ...classes,
  ...cloth,
  ...fields,
  ...files,
  ...folders,
  ...foundation,
  ...pictures,
  ...planning,
  ...quilt,
  ...quiltFile,
  ...quiltPlan,
  ...reading,
  ...shapes,
  ...stash,
  ...work,
};
