import { lengthText } from "../../../edits/block-edits.ts";
import { renameFabric, setColour, setPrint, setRepeat } from "../../../edits/fabric-edits.ts";
import type { FabricModel } from "../../../edits/model.ts";
import { fabricKey, TICKS_PER } from "../../../planning.ts";
import { inBox, type Photo, type Photos, type Quarter } from "../../photos.ts";
import { UNIT } from "../../planner/picture.ts";
import { shrunkPhoto } from "../../shrink-photo.ts";
import { words } from "../../words/index.ts";
import { picture } from "../actions.ts";
import { kindOf, printText, upOf } from "../draw/print-words.ts";
import * as state from "../state.ts";
import { rulerMark, sizeSaid } from "../steps.tsx";

/** What a picture is taken to show across until the maker says: as wide as a hand is long. */
const usualAcross = (): number =>
  ["in", "yd"].includes(state.model.value.unit) ? (8 * TICKS_PER.in) / UNIT : 200;

const bytesSaid = (bytes: number): string =>
  bytes < 1_000_000
    ? words.cloth.kiloBytes(Math.max(1, Math.round(bytes / 1000)))
    : words.cloth.megaBytes((bytes / 1_000_000).toFixed(1));

const having = (fabric: FabricModel, photo: Photo): Photos => ({
  ...state.photos.value,
  [fabricKey(fabric.name)]: photo,
});

/** A file becomes the picture of a fabric, made small, and the fabric takes its colour from it; or it is said why not. */
export async function takePhoto(fabric: FabricModel, file: File): Promise<void> {
  const shrunk = await shrunkPhoto(file, usualAcross());
  if ("refused" in shrunk) {
    state.said.value = words.cloth.photoRefused[shrunk.refused];
    return;
  }
  const { photo, colour, from, coarse } = shrunk;
  const told = words.cloth.photoTaken(fabric.name, bytesSaid(from), bytesSaid(photo.picture.size));
  picture(having(fabric, photo), coarse ? `${told} ${words.cloth.photoCoarse}` : told, (text) =>
    setColour(text, fabric.index, colour),
  );
}

export function dropPhoto({ name }: FabricModel): void {
  const { [fabricKey(name)]: _, ...left } = state.photos.value;
  picture(left, words.cloth.photoGone(name));
}

/** Another name for a fabric; its picture goes with it. */
export function renamePictured(fabric: FabricModel, photo: Photo, wish: string): void {
  const photos = { ...having(fabric, photo), [fabricKey(wish)]: photo };
  picture(photos, wish, (text) => renameFabric(text, fabric.index, wish));
}

/** What is in the box, to the mark of the file's ruler: no repeat is measured finer. */
function repeatOf(photo: Photo): { across: number; down: number } {
  const mark = rulerMark();
  const near = (mm: number): number => Math.max(mark, Math.round((mm * UNIT) / mark) * mark);
  const { across, down } = inBox(photo);
  return { across: near(across), down: near(down) };
}

function repeatText(photo: Photo): string {
  const { across, down } = repeatOf(photo);
  return `${lengthText(across, state.model.value)} x ${lengthText(down, state.model.value)}`;
}

export const boxSize = (photo: Photo): string => {
  const { across, down } = inBox(photo);
  return sizeSaid(across * UNIT, down * UNIT);
};

/** The picture is seen in another way. A repeat that is said goes with its box. */
export function changePhoto(fabric: FabricModel, photo: Photo, say: string): void {
  picture(having(fabric, photo), say, (text) =>
    fabric.repeat === null ? text : setRepeat(text, fabric.index, repeatText(photo)),
  );
}

/** What is in the box is the repeat, or no repeat is said any more. */
export function sayRepeat(fabric: FabricModel, photo: Photo): void {
  const off = fabric.repeat !== null;
  const { across, down } = repeatOf(photo);
  const say = off
    ? words.cloth.repeatNone(fabric.name)
    : words.cloth.repeatSaid(fabric.name, sizeSaid(across, down));
  picture(having(fabric, { ...photo }), say, (text) =>
    setRepeat(text, fabric.index, off ? "" : repeatText(photo)),
  );
}

/** The arrow a quarter on: the file is told along which way the print reads. */
export function turnArrow(fabric: FabricModel, photo: Photo): void {
  const up = ((upOf(photo, fabric) + 90) % 360) as Quarter;
  const along = up % 180 === 0;
  const kind = kindOf(fabric.print) === "none" ? "one-way" : kindOf(fabric.print);
  const way = words.cloth.arrowWays[up] ?? "";
  picture(having(fabric, { ...photo, up }), words.cloth.arrowTurned(fabric.name, way, along), (text) =>
    setPrint(text, fabric.index, printText(kind, along ? "along" : "across")),
  );
}

/** A picture dropped on the page goes to the fabric that is open; whether there is one. */
export function dropped(file: File): boolean {
  const name = state.opened.value;
  const fabric = state.model.value.fabrics.find((one) => one.name === name);
  if (state.region.value !== "fabric" || fabric === undefined) return false;
  void takePhoto(fabric, file);
  return true;
}
