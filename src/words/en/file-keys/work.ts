import type { WorkKey } from "../../../diagnostics/file-keys.ts";
import type { KeyWords } from "../../file-keys.ts";

/** The file that keeps what is cut. */
export const workKeys: KeyWords<WorkKey> = {
  "work.fact": { says: "one thing said of the fabric while it is cut", example: "cut to strip 12" },
  "work.cloth.fabric": { says: "the fabric it is of", example: "ivory" },
  "work.cloth.name": { says: "what it is called", example: "scrap" },
  "work.cloth.size": { says: "its usable size, across first", example: "21 x 18 in" },
  "work.cloth.count": { says: "how many there are", example: 24 },
  "work.planned.kits": { says: "how many quilts are cut together", example: 24 },
  "work.planned.style": { says: "how strips may be cut", example: "strips-2" },
  "work.planned.prefer": { says: "what was aimed at", example: "simple" },
  "work.planned.thorough": { says: "searched longer", example: true },
  "work.planned.fat-quarters": { says: "every colour from fat quarters", example: true },
  "work.planned.width": { says: "usable width tried on every bolt", example: "41 in" },
  "work.planned.bolt": { says: "where every bolt was taken to end", example: "12 yd" },
  "work.planned.ruler": { says: "ruler that the quilt was restated for", example: "cm" },
  "work.planned.budget": { says: "seconds that each fabric was searched at most", example: 60 },
  "work.planned.cloth": { says: "cloth from the drawer that was offered", example: "- fabric: ivory" },
  "work.said.fabric": { says: "the fabric that is spoken of", example: "ivory" },
  "work.said.plan": { says: "mark of the plan that the numbers are of", example: "5f0c7a2be9d14c31" },
  "work.said.facts": { says: "what was said, in order", example: "- cut to strip 12" },
  work: { title: "Crossgrain work", says: "what is cut, measured and spoiled of a quilt that is being cut" },
  "work.format": { says: "says what this file is", example: "crossgrain work" },
  "work.version": { says: "version of the format", example: "1" },
  "work.planned": { says: "how the plan was made that the cutting began with" },
  "work.said": { says: "what was said of the work, in order", example: "- fabric: ivory" },
};
