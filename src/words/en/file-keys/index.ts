import type { FileKeyWords } from "../../file-keys.ts";
import { fabricsKeys } from "./fabrics.ts";
import { makingKeys } from "./making.ts";
import { quiltKeys } from "./quilt.ts";
import { workKeys } from "./work.ts";

/** What every key of a file means, and an example of it. */
export const fileKeys: FileKeyWords = { ...fabricsKeys, ...quiltKeys, ...makingKeys, ...workKeys };
