import type { WhyNot } from "../../../choices/why-not.ts";
import { said } from "../../diagnostics.ts";
import { diagnostics } from "../diagnostics/index.ts";
import { directionLostBy } from "../diagnostics/quilt.ts";
import { list, plural } from "../language.ts";

/** Why a way that was tried cannot be taken. */
export function whyNot(why: WhyNot): string {
  switch (why.because) {
    case "fault":
      return why.fault === null ? "It cannot be planned." : said(why.fault, diagnostics).message;
    case "print":
      // What is done instead stands in a row of its own.
      return directionLostBy(why.fault.facts);
    case "foundation":
      return "Its blocks are made on the foundation, patch by patch.";
    case "width":
      return "Its pieces do not fit the width of the fabric.";
    case "blocks-not-square": {
      const [are, do_] = plural(why.blocks.length, ["is", "it does"], ["are", "they do"]);
      return `${list(why.blocks)} ${are} not square, and turned a quarter ${do_} not fit the rows.`;
    }
    case "motifs-not-square":
      return `the motifs of ${list(why.blocks)} are not square and can only be turned by halves.`;
  }
}
