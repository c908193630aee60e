import { tongue } from "../words/index.ts";

/** A kind of unit, in the language of the page: the file has its own word for it. */
export const unitSaid = (kind: string): string => tongue.unitNames.unit(kind);

/** A patch of a unit, likewise. */
export const partSaid = (part: string): string => tongue.unitNames.part(part);
