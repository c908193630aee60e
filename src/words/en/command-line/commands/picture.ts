export const picture = {
  widthOfThePicture: "width of the picture; its height follows",
  aDrawingAsA: "a drawing as a PNG picture, of the width you need",
  makesAPngPicture:
    "Makes a PNG picture of an SVG drawing that plan or arrange has written, for a newsletter, a shop page or a slide, and puts it beside the drawing.",
  svgDrawings: "SVG drawings",
  pngWritten: (value: string) => `${value}.png written\n`,
  /** Command lines to copy, without the program's name. */
  examples: [
    "new blocks > my-quilt.yaml",
    "plan my-quilt.yaml --out mine",
    "picture mine/top.svg",
    "picture mine/top.svg mine/pressing.svg --width 2400",
  ],
};
