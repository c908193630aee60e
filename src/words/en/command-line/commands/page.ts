export const page = {
  theDrawingPageDraw: "the drawing page: draw a quilt and see what it takes, in a browser",
  writesOneHtmlFile:
    "Writes one HTML file that opens by double click, from a folder or a memory stick, and needs no network: squared paper, units and fabrics to draw a quilt with, and beside it what to buy. With a file the page opens on that quilt, to hand to a class. The file itself is not changed.",
  theQuiltToOpen: "the quilt to open on, YAML or JSON; none: begin with a picture or an empty sheet",
  writtenOpenItWith: (out: string) => `${out} written: open it with a double click, or with your browser\n`,
  /** Command lines to copy, without the program's name. */
  examples: ["page", "new blocks > my-quilt.yaml", "page my-quilt.yaml --out my-quilt.html"],
};
