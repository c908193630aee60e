import type { Patch } from "../../quilt/types.ts";
import type { Words } from "../../words/index.ts";
import { fabricList } from "../scene/fabric-list.ts";
import { PAGE_WIDTH } from "../scene/frame.ts";
import { onPaper } from "../scene/paper.ts";
import type { Scene, SceneNode } from "../scene/scene.ts";
import { textIn } from "../scene/text.ts";
import type { DrawnFabric } from "../scene/textures.ts";

/** A picture of patches before its key: what is drawn, and where the drawing ends. */
export interface PatchPicture {
  idPrefix: string;
  title: string;
  description: string;
  nodes: readonly SceneNode[];
  patches: readonly Patch[];
  /** Page units to a millimetre, in which the textures are drawn. */
  scale: number;
  /** Where the key begins, in page units from the top. */
  bottom: number;
}

/** The whole page: the picture, the fabrics it uses, what its arrows mean, on paper with a margin. */
export function patchPage(picture: PatchPicture, fabrics: readonly DrawnFabric[], words: Words): Scene {
  const { idPrefix, title, description, patches, scale } = picture;
  const used = new Set(patches.map(({ fabric }) => fabric));
  const key = fabricList(fabrics, used, {
    scale,
    heading: words.drawings.quilt.fabrics,
    top: picture.bottom,
  });
  const nodes = [...picture.nodes, ...key.nodes];
  let y = key.bottom;
  const arrowed = new Set(patches.flatMap(({ up, fabric }) => (up === null ? [] : [fabric])));
  const twoWay = (name: string): boolean =>
    fabrics.some((fabric) => fabric.name === name && fabric.print?.kind === "two-way");
  const notes = [
    ...([...arrowed].every(twoWay) ? [] : [words.drawings.quilt.arrows]),
    ...([...arrowed].some(twoWay) ? [words.drawings.quilt.bothWays] : []),
  ];
  for (const note of notes) {
    nodes.push(textIn(note, { x: 0, y, width: PAGE_WIDTH, height: 13 }, { size: 9.5 }));
    y += 15;
  }
  return {
    idPrefix,
    title,
    description,
    ...onPaper(nodes, y),
  };
}
