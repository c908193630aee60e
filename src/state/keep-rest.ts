import type { Ticks } from "../length/types.ts";
import {
  cutInto,
  LENGTH_IN_HAND,
  layFrom,
  listLeftovers,
  listSteps,
  orderCuts,
  type PlanSettings,
  sumWaste,
} from "../plan/index.ts";
import type { FabricPlan, FixedStock, Lay, Part } from "../plan/types.ts";
import { clothInHand } from "./cloth-in-hand.ts";
import { numberedParts } from "./find-strips.ts";
import type { Work } from "./take-stock.ts";

export type { Ticks, Lay, Part, FixedStock };
