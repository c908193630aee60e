import type { QuiltSpec } from "./quilt-types.ts";
import type { CutListSpec } from "./types.ts";

/** What a file can be; `kind` tells which. */
export type Spec = CutListSpec | QuiltSpec;
