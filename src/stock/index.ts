export { clothDefaults } from "./defaults.ts";
export { fabricKey } from "./fabric-key.ts";
export { FINISHED_NAMES, finishedSize } from "./finished-sizes.ts";
export {
  MATTRESS_SIZES,
  mattressName,
  mattressSize,
  USUAL_DROP,
} from "./mattress-sizes.ts";
export { lengthLimit, purchaseFor } from "./purchase.ts";
export { TRADE_SIZES, type TradeSize, tradeSize } from "./trade-sizes.ts";
export type { SoldCloth } from "./types.ts";
export { afterWashing, beforeWashing, usableWidth } from "./usable-width.ts";
