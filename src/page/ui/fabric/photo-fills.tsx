import type { FabricModel } from "../../../edits/model.ts";
import { fabricKey } from "../../../planning.ts";
import { inBox, type Photo, shownBy, writtenPhotos } from "../../photos.ts";
import { UNIT } from "../../planner/picture.ts";
import type { SeenPhoto } from "../../planner/pictured.ts";
import { upOf } from "../draw/print-words.ts";
import * as state from "../state.ts";

/** Ways a print's up is drawn: quarters, and those between them for quilts on point. */
const WAYS = [0, 45, 90, 135, 180, 225, 270, 315];

const addresses = new WeakMap<Blob, string>();

/** An address of a picture inside the page, the same as long as it is there. */
function addressOfPhoto({ picture }: Photo): string {
  const known = addresses.get(picture);
  if (known !== undefined) return known;
  const made = URL.createObjectURL(picture);
  addresses.set(picture, made);
  return made;
}

/** The picture of a fabric; null where it has none. */
export const photoOf = ({ name }: Pick<FabricModel, "name">): Photo | null =>
  state.photos.value[fabricKey(name)] ?? null;

/** Millimetres of one tile: the repeat that the file tells, or as much as the picture shows. */
function tileOf(photo: Photo, { repeat }: Pick<FabricModel, "repeat">): { across: number; down: number } {
  return repeat === null ? inBox(photo) : { across: repeat.across / UNIT, down: repeat.down / UNIT };
}

const PLACES = {
  0: () => "",
  90: (_: number, down: number) => `translate(${down} 0) rotate(90)`,
  180: (across: number, down: number) => `translate(${across} ${down}) rotate(180)`,
  270: (across: number) => `translate(0 ${across}) rotate(270)`,
} as const;

/** The picture as it lies turned, a millimetre of cloth one unit long. */
export function PhotoPicture({ photo }: { photo: Photo }) {
  const [wide, high] = [photo.across, (photo.across * photo.high) / photo.wide];
  return (
    <g transform={PLACES[photo.turn](wide, high)}>
      <image href={addressOfPhoto(photo)} width={wide} height={high} preserveAspectRatio="none" />
    </g>
  );
}

/** The picture with its box as a tile of its true size, in millimetres. */
function Tile({ fabric, photo }: { fabric: FabricModel; photo: Photo }) {
  const { across, down } = tileOf(photo, fabric);
  const [box, whole] = [inBox(photo), shownBy(photo)];
  const scale = `scale(${across / box.across} ${down / box.down})`;
  const moved = `translate(${-photo.box.x * whole.across} ${-photo.box.y * whole.down})`;
  return (
    <pattern id={`photo-${fabric.index}`} patternUnits="userSpaceOnUse" width={across} height={down}>
      <g transform={`${scale} ${moved}`}>
        <PhotoPicture photo={photo} />
      </g>
    </pattern>
  );
}

/** The tiles of all fabrics that have a picture, once for every drawing on the page. */
export function PhotoDefs() {
  return (
    <svg class="photodefs" width="0" height="0" aria-hidden="true">
      <defs>
        {state.model.value.fabrics.map((fabric) => {
          const photo = photoOf(fabric);
          return photo === null ? null : <Tile key={fabric.name} fabric={fabric} photo={photo} />;
        })}
      </defs>
      <PhotoFills prefix="" mm={1} />
    </svg>
  );
}

/** The same turned every way, for a drawing in which a millimetre of cloth is `mm` units long. */
export function PhotoFills({ prefix, mm }: { prefix: string; mm: number }) {
  const own = state.model.value.fabrics.filter((fabric) => photoOf(fabric) !== null);
  if (own.length === 0) return null;
  return (
    <defs>
      {own.flatMap(({ index }) =>
        WAYS.map((way) => (
          <pattern
            key={`${index} ${way}`}
            id={`${prefix}photo-${index}-${way}`}
            href={`#photo-${index}`}
            patternTransform={`scale(${mm}) rotate(${way})`}
          />
        )),
      )}
    </defs>
  );
}

/** Fabrics that have a picture, for drawings that the worker makes: they name the tiles that lie on the page. */
export const seenPhotos = (): SeenPhoto[] =>
  state.model.value.fabrics.flatMap((fabric): SeenPhoto[] => {
    const photo = photoOf(fabric);
    if (photo === null) return [];
    return [{ fabric: fabric.name, id: `photo-${fabric.index}`, up: upOf(photo, fabric) }];
  });

/** The tiles as they lie on the page, their pictures written into them: for a book that is looked at, printed and saved. */
export async function writtenTiles(): Promise<string> {
  const laid = document.querySelector(".frame > .photodefs");
  const pictured = state.model.value.fabrics.filter((fabric) => photoOf(fabric) !== null);
  if (laid === null || pictured.length === 0) return "";
  const keys = pictured.map(({ name }) => fabricKey(name));
  const letters = await writtenPhotos(state.photos.value, keys);
  const copy = laid.cloneNode(true) as Element;
  copy.setAttribute("style", "position:absolute");
  copy.querySelectorAll("image").forEach((image, i) => {
    image.setAttribute("href", `data:image/jpeg;base64,${letters[keys[i] ?? ""]?.picture ?? ""}`);
  });
  return copy.outerHTML;
}

/** What a patch is filled with where its fabric has a picture, its print's up where it is to point; else null. */
export function photoFill(prefix: string, fabric: FabricModel, up: number | null): string | null {
  const photo = photoOf(fabric);
  if (photo === null) return null;
  const turned = up === null ? 0 : up - upOf(photo, fabric);
  const way = (((Math.round(turned / 45) * 45) % 360) + 360) % 360;
  return `url(#${prefix}photo-${fabric.index}-${way}) ${fabric.colour}`;
}
