/** Comments at the top of the file that keeps the work. */
export const workFile = {
  about: [
    "# Was von einem Quilt geschnitten, gemessen und verdorben ist, geführt von crossgrain go-on. Wer eine Zeile oder einen",
    "# ganzen Eintrag herausnimmt, hat es nie gesagt. Jeder Eintrag spricht vom Schnittplan, wie er da gerade war.",
  ].join("\n"),
};
