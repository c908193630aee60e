/*
 * Textures and hatches of a drawing as lines that are clipped, in place of tiles. A browser that prints a page turns every
 * tiled ground into a picture of dots, and a book of sixty drawings into ten megabytes; lines stay lines.
 */

interface Texture {
  /** User units of a tile, and of its own unit. */
  size: number;
  per: number;
  marks: Mark[];
}

/** Lines that go on from tile to tile; `dash`: how much of a tile is drawn, from `from` on. */
interface Mark {
  way: "across" | "down" | "rising" | "falling";
  /** Where in the tile: down it for `across`, across it for `down`, along its upper edge for slanting ones. */
  at: number;
  from: number;
  dash: number | null;
  ink: string;
  width: number;
}

interface Bounds {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

const numberIn = (tag: string, name: string): number =>
  Number(new RegExp(`\\s${name}="(-?[\\d.]+)"`).exec(tag)?.[1] ?? 0);
const textIn = (tag: string, name: string): string => new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1] ?? "";

/** Decimals of a place in a drawing's own units. */
const say = (value: number): string => String(Number(value.toFixed(2)));

const within = (value: number, size: number): number => ((value % size) + size) % size;

function markOfLine(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  size: number,
): Omit<Mark, "ink" | "width"> {
  if (y1 === y2) return { way: "across", at: y1, from: Math.min(x1, x2), dash: shareOf(x1, x2, size) };
  if (x1 === x2) return { way: "down", at: x1, from: Math.min(y1, y2), dash: shareOf(y1, y2, size) };
  const rising = x2 - x1 > 0 !== y2 - y1 > 0;
  return {
    way: rising ? "rising" : "falling",
    at: within(rising ? x1 + y1 : x1 - y1, size),
    from: 0,
    dash: null,
  };
}

function shareOf(a: number, b: number, size: number): number | null {
  const long = Math.abs(b - a);
  return long >= size ? null : long;
}

/** A dot is so small that a square one looks the same; a ring is drawn by its four sides. */
function marksOfCircle(tag: string): Mark[] {
  const [x, y, r] = [numberIn(tag, "cx"), numberIn(tag, "cy"), numberIn(tag, "r")];
  const fill = textIn(tag, "fill");
  if (fill !== "" && fill !== "none") {
    return [{ way: "across", at: y, from: x - r, dash: 2 * r, ink: fill, width: 2 * r }];
  }
  const look = { ink: textIn(tag, "stroke"), width: numberIn(tag, "stroke-width") };
  const long = 2 * r + look.width;
  return [-r, r].flatMap((off): Mark[] => [
    { way: "across", at: y + off, from: x - long / 2, dash: long, ...look },
    { way: "down", at: x + off, from: y - long / 2, dash: long, ...look },
  ]);
}

function marksOf(tag: string, size: number): Mark[] {
  if (tag.startsWith("<circle")) return marksOfCircle(tag);
  const look = { ink: textIn(tag, "stroke"), width: numberIn(tag, "stroke-width") };
  if (tag.startsWith("<line")) {
    const [x1, y1, x2, y2] = ["x1", "y1", "x2", "y2"].map((name) => numberIn(tag, name));
    return [{ ...markOfLine(x1 ?? 0, y1 ?? 0, x2 ?? 0, y2 ?? 0, size), ...look }];
  }
  const [, x1, y1, x2, y2] = /d="M(-?[\d.]+) (-?[\d.]+)L(-?[\d.]+) (-?[\d.]+)"/.exec(tag) ?? [];
  return [{ ...markOfLine(Number(x1), Number(y1), Number(x2), Number(y2), size), ...look }];
}

function texturesOf(svg: string): Map<string, Texture> {
  const found = new Map<string, Texture>();
  for (const [, head = "", inner = ""] of svg.matchAll(/<pattern([^>]*)>([\s\S]*?)<\/pattern>/g)) {
    const own = numberIn(head, "width");
    const per = Number(/scale\(([\d.]+)\)/.exec(head)?.[1] ?? 1);
    const marks = [...inner.matchAll(/<(?:line|circle|path)[^>]*>/g)].flatMap(([tag]) => marksOf(tag, own));
    // The ends of a slanting line carried over into its neighbours lie on the same line.
    const distinct = new Map(marks.map((mark) => [JSON.stringify(mark), mark]));
    found.set(textIn(head, "id"), { size: own, per, marks: [...distinct.values()] });
  }
  return found;
}

/** The box of an outline in the short steps that drawings are written in. */
function boundsOfPath(d: string): Bounds {
  const bounds = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  let [x, y] = [0, 0];
  for (const [, step, rest = ""] of d.matchAll(/([MLhvl])([^MLhvlzZ]*)/g)) {
    const [a = 0, b = 0] = (rest.match(/-?[\d.]+/g) ?? []).map(Number);
    if (step === "M" || step === "L") [x, y] = [a, b];
    else if (step === "h") x += a;
    else if (step === "v") y += a;
    else [x, y] = [x + a, y + b];
    bounds.left = Math.min(bounds.left, x);
    bounds.right = Math.max(bounds.right, x);
    bounds.top = Math.min(bounds.top, y);
    bounds.bottom = Math.max(bounds.bottom, y);
  }
  return bounds;
}

function boundsOf(tag: string): Bounds {
  const [left, top] = [numberIn(tag, "x"), numberIn(tag, "y")];
  return { left, top, right: left + numberIn(tag, "width"), bottom: top + numberIn(tag, "height") };
}

/** Places a tile apart, the first at `at` in its tile, from before `low` to `high`. */
function places(at: number, tile: number, low: number, high: number): number[] {
  const first = Math.floor((low - at) / tile) * tile + at;
  const count = Math.max(0, Math.floor((high - first) / tile) + 1);
  return Array.from({ length: count }, (_, i) => first + i * tile);
}

/** A slanting line from one place across to another, as far as it lies in the box; `down`: how far down it is there. */
function slanting(from: number, to: number, down: (x: number) => number, { left, right }: Bounds): string {
  const [a, b] = [Math.max(from, left), Math.min(to, right)];
  return a >= b ? "" : `M${say(a)} ${say(down(a))}L${say(b)} ${say(down(b))}`;
}

function linesOf(mark: Mark, { size, per }: Texture, box: Bounds): string {
  const tile = size * per;
  const at = mark.at * per;
  // What lies just outside still reaches in with half its width.
  const pad = (mark.width * per) / 2;
  const begin = (low: number): number =>
    mark.dash === null ? low : Math.floor((low - mark.from * per) / tile) * tile + mark.from * per;
  switch (mark.way) {
    case "across": {
      const x = begin(box.left);
      return places(at, tile, box.top - pad, box.bottom + pad)
        .map((y) => `M${say(x)} ${say(y)}H${say(box.right)}`)
        .join("");
    }
    case "down": {
      const y = begin(box.top);
      return places(at, tile, box.left - pad, box.right + pad)
        .map((x) => `M${say(x)} ${say(y)}V${say(box.bottom)}`)
        .join("");
    }
    case "rising":
      return places(at, tile, box.left + box.top - pad, box.right + box.bottom + pad)
        .map((c) => slanting(c - box.bottom, c - box.top, (x) => c - x, box))
        .join("");
    case "falling":
      return places(at, tile, box.left - box.bottom - pad, box.right - box.top + pad)
        .map((c) => slanting(c + box.top, c + box.bottom, (x) => x - c, box))
        .join("");
  }
}

function textured(texture: Texture, boxes: readonly Bounds[]): string {
  return texture.marks
    .map((mark) => {
      const { per, size } = texture;
      const dash =
        mark.dash === null
          ? ""
          : ` stroke-dasharray="${say(mark.dash * per)} ${say((size - mark.dash) * per)}"`;
      const look = `stroke="${mark.ink}" stroke-width="${say(mark.width * per)}"${dash}`;
      return `<path d="${boxes.map((box) => linesOf(mark, texture, box)).join("")}" fill="none" ${look}/>`;
    })
    .join("\n");
}

function union(all: readonly Bounds[]): Bounds {
  return {
    left: Math.min(...all.map(({ left }) => left)),
    top: Math.min(...all.map(({ top }) => top)),
    right: Math.max(...all.map(({ right }) => right)),
    bottom: Math.max(...all.map(({ bottom }) => bottom)),
  };
}

const areaOf = ({ left, top, right, bottom }: Bounds): number => (right - left) * (bottom - top);

/** The boxes lines are drawn in: one round all shapes, or each its own where they are far apart. */
function boxesOf(shapes: readonly string[]): Bounds[] {
  const own = shapes.flatMap((tag) =>
    tag.startsWith("<rect")
      ? [boundsOf(tag)]
      : (textIn(tag, "d").match(/M[^M]*/g) ?? []).map((outline) => boundsOfPath(outline)),
  );
  const all = union(own);
  return own.reduce((sum, box) => sum + areaOf(box), 0) < areaOf(all) * 0.5 ? own : [all];
}

const bare = (tag: string): string => tag.replace(/\s(?:fill|stroke|stroke-width|id)="[^"]*"/g, "");

/** A drawing whose grounds are lines in place of tiles; one without tiles as it is. */
export function lineTextures(svg: string): string {
  const textures = texturesOf(svg);
  if (textures.size === 0) return svg;
  let count = 0;
  /** The lines of a texture inside these shapes. */
  const filled = (id: string, texture: Texture, shapes: readonly string[]): string => {
    count += 1;
    const clip = `${id}-in-${count}`;
    const lines = textured(texture, boxesOf(shapes));
    return `<clipPath id="${clip}">${shapes.map(bare).join("")}</clipPath>\n<g clip-path="url(#${clip})">\n${lines}\n</g>`;
  };
  return svg
    .replace(/<pattern[\s\S]*<\/pattern>\s*/, "")
    .replace(/<defs>\s*<\/defs>\s*/, "")
    .replace(/<(?:path|rect)[^>]*\sfill="url\(#([^)"]+)\)"[^>]*\/>/g, (tag, id: string) => {
      const texture = textures.get(id);
      if (texture === undefined) return tag;
      const edge = textIn(tag, "stroke") === "none" ? "" : `\n${tag.replace(/fill="[^"]*"/, 'fill="none"')}`;
      return `${filled(id, texture, [tag])}${edge}`;
    })
    .replace(/(<g[^>]*\sfill=")url\(#([^)"]+)\)("[^>]*>)([\s\S]*?)<\/g>/g, (whole, head, id, rest, inner) => {
      const texture = textures.get(id);
      const shapes = String(inner).match(/<(?:path|rect)[^>]*\/>/g) ?? [];
      if (texture === undefined || shapes.length === 0) return whole;
      return `${head}none${rest}${inner}${filled(id, texture, shapes)}</g>`;
    });
}
