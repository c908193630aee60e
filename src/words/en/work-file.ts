/** Comments at the top of the file that keeps the work. */
export const workFile = {
  about: [
    "# What is cut, measured and spoiled of a quilt, kept by crossgrain go-on. Take a line out, or a whole entry, and it is",
    "# as if it had never been said. Each entry speaks of the diagram as it was when it was said.",
  ].join("\n"),
};
