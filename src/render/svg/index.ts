export { type DrawOptions, drawFabric } from "./draw-fabric.ts";
