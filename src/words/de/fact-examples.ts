/** What can be said of the work while it is done. */
export const FACT_EXAMPLES =
  "So wird es gesagt: `cut to strip 12`, `strips 1, 3 and 5 cut`, `strip 4 cut off`, `strip 7 spoiled`, `6 of A cut`, " +
  "`2 of A spoiled`, `20 of A in the bag`, `all cut`, `40 in wide`, `1 1/2 yd left`, `12 x 20 in in hand`.";
