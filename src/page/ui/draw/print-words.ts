import type { FabricModel } from "../../../edits/model.ts";
import type { Photo, Quarter } from "../../photos.ts";

export const axisOf = (print: string): "along" | "across" => (print.endsWith("across") ? "across" : "along");
export const kindOf = (print: string): string => print.split(" ")[0] ?? "none";

/** A print as the file writes it: along the selvage is what is meant where nothing is written. */
export const printText = (kind: string, axis: "along" | "across"): string =>
  kind === "none" || axis === "along" ? kind : `${kind} ${axis}`;

/** Where a print's up points in a picture: as the arrow was turned, unless the file says the other axis. */
export function upOf(photo: Photo, { print }: Pick<FabricModel, "print">): Quarter {
  const axis = photo.up % 180 === 0 ? "along" : "across";
  return kindOf(print) === "none" || axis === axisOf(print) ? photo.up : axisOf(print) === "across" ? 90 : 0;
}
