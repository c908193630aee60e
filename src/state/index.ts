export type { Change } from "./changes.ts";
export type { StripPlace } from "./find-strips.ts";
export { numberedParts } from "./find-strips.ts";
export { fingerprint } from "./fingerprint.ts";
export { goOn } from "./go-on.ts";
export {
  clothsOf,
  openFrom,
  type SpokenCloth,
  spoiledFact,
  stopFacts,
  tickFacts,
  toldStrips,
  workFacts,
} from "./ticks.ts";
