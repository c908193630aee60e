import { inflateSync } from "node:zlib";

/** Straight outlines of a PDF page, corners in points from the lower left corner, as ISO 32000 has them. */
export interface PdfPath {
  points: [number, number][];
  closed: boolean;
}

type Matrix = [number, number, number, number, number, number];

function times(m: Matrix, n: Matrix): Matrix {
  const [a, b, c, d, e, f] = m;
  const [p, q, r, s, t, u] = n;
  return [a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u];
}

/** Every path of one content stream, in page space: `q`, `Q`, `cm`, `m`, `l`, `re` and `h` are followed. */
function pathsOf(content: string): PdfPath[] {
  const paths: PdfPath[] = [];
  const stack: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let operands: number[] = [];
  let open: PdfPath | null = null;
  const at = (x: number, y: number): [number, number] => {
    const [a, b, c, d, e, f] = matrix;
    return [a * x + c * y + e, b * x + d * y + f];
  };
  const begin = (points: [number, number][], closed: boolean): PdfPath => {
    const path = { points, closed };
    paths.push(path);
    return path;
  };
  // Text and names are of no concern here, and may hold letters that look like operators.
  const plain = content.replace(/\((?:\\.|[^\\()])*\)|<[0-9a-fA-F\s]*>|\/[^\s/<>[\]()]+/g, " ");
  for (const token of plain.split(/[\s[\]]+/)) {
    const number = Number(token);
    if (token !== "" && Number.isFinite(number)) {
      operands.push(number);
      continue;
    }
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = operands.slice(-6);
    if (token === "q") stack.push(matrix);
    else if (token === "Q") matrix = stack.pop() ?? [1, 0, 0, 1, 0, 0];
    else if (token === "cm") matrix = times([a, b, c, d, e, f], matrix);
    else if (token === "m") open = begin([at(a, b)], false);
    else if (token === "l") open?.points.push(at(a, b));
    else if (token === "h" && open !== null) open.closed = true;
    else if (token === "re") begin([at(a, b), at(a + c, b), at(a + c, b + d), at(a, b + d)], true);
    operands = [];
  }
  return paths;
}

/** Paths of every page of a PDF file, compressed or not, in the order of its content streams. */
export function pdfPaths(file: Uint8Array): PdfPath[][] {
  const text = Buffer.from(file).toString("latin1");
  return [...text.matchAll(/stream\r?\n([\s\S]*?)\r?\nendstream/g)].flatMap(([, body = ""]) => {
    try {
      const content = inflateSync(Buffer.from(body, "latin1")).toString("latin1");
      return /(^|\s)(re|l|m)\s/.test(content) ? [pathsOf(content)] : [];
    } catch {
      return [];
    }
  });
}
