export type { Change } from "./changes.ts";
export { type GoneOn, type GoOnRequest, goOn } from "./go-on.ts";
