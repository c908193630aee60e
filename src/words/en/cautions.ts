/** What is said of the blade, once: every paper and drawing takes its cautions from here. Common practice, no source. */
export const bladeCautions = {
  shut: "Close the blade after every cut, even when you put the cutter down for a moment.",
  away: "Stand up, cut away from yourself, and never toward the hand that holds the ruler.",
  long: "On a long cut stop with the blade down, walk the hand that holds the ruler up beside it, and go on.",
  fingers: "Cut on a rotary mat against a ruler, with fingertips and knuckles well back from its edge.",
  blunt: "A blunt blade needs force and slips: change it, and wrap the old one before throwing it away.",
  pins: "Never a pin under the blade: take every pin out of what you cut.",
  tired: "Do not cut when you are tired. Keep the closed cutter out of children's reach.",
};

/** With needle and iron. Common practice, no source. */
export const sewingCautions = {
  needle:
    "Keep fingers clear of the needle; take the foot off the pedal before you reach under it. Thread it with the machine off.",
  pins: "Take pins out before they reach the needle: one that is hit breaks it.",
  iron: "An iron burns: set it back on its heel and press away from your hand. Touch it and its plug with dry hands only, and switch it off when you leave.",
};

export const estimates =
  "Amounts are estimates: check them, and your own fabric's usable width, before you cut.";
