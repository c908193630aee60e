export {
  boughtName,
  clothFacts,
  clothName,
  isFatQuarter,
  LENGTH_IN_HAND,
  restName,
  SHORTER_LENGTH,
  stashName,
} from "./cloth-names.ts";
export { clothDefaults } from "./defaults.ts";
export { fabricKey } from "./fabric-key.ts";
export { FINISHED_NAMES, finishedSize } from "./finished-sizes.ts";
export {
  MATTRESS_SIZES,
  mattressName,
  mattressSize,
  USUAL_DROP,
} from "./mattress-sizes.ts";
export {
  costOf,
  leastPurchase,
  lengthLimit,
  mostOfBolt,
  passesBolt,
  purchaseFor,
  purchaseOfLengths,
} from "./purchase.ts";
export { TRADE_SIZES, type TradeSize, tradeSize } from "./trade-sizes.ts";
export type { BoltLength, SoldCloth } from "./types.ts";
export { afterWashing, beforeWashing, usableWidth } from "./usable-width.ts";
