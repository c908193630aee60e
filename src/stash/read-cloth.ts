import { type StashFault, stashClothUnreadable, stashSizeTaken } from "../diagnostics/stash.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { CENTIMETRE, familyOf, floor, formatMeasure, INCH, parseLength, parseSize } from "../length/index.ts";
import type { LengthUnit, Ticks } from "../length/types.ts";
import { TRADE_SIZES, tradeSize } from "../stock/index.ts";
import type { StashCloth } from "./types.ts";

/** Reads a cloth as said on a command line: a fabric and a size, `21 x 18 in` or `fat quarter`. */
export function readCloth(
  fabric: string,
  size: string,
  count: number,
  note: string,
  bare: LengthUnit,
): Outcome<StashCloth> {
  const refuse = (problem: StashFault): Outcome<StashCloth> => ({
    value: null,
    diagnostics: [stashClothUnreadable(problem)],
  });
  const name = fabric.trim();
  if (name === "" || /\p{Cc}/u.test(name)) return refuse({ is: "no-name" });
  if (!Number.isInteger(count) || count < 1 || count > 9999) {
    return refuse({ is: "count", found: String(count), least: 1, most: 9999 });
  }
  const trade = tradeSize(size);
  if (trade !== null && trade.across !== null) {
    const { across, along } = trade;
    return { value: { fabric: name, across, along, count, note }, diagnostics: [] };
  }
  if (trade !== null) return refuse({ is: "strips-no-length", example: true, size });
  const whole = wholeWidth(size, bare);
  if (whole !== null) {
    const { along, said } = whole;
    const across = usableWidth(said);
    if (along <= 0) return refuse({ is: "no-cloth", text: size });
    const lengths = { across: formatMeasure(across, said), along: formatMeasure(along, said) };
    return {
      value: { fabric: name, across, along, count, note },
      diagnostics: [stashSizeTaken(size, { as: "whole-width", ...lengths })],
    };
  }
  const read = parseSize(size, bare);
  if (!read.ok) return refuse({ is: "size", text: size, fault: read.problem.fault });
  const [across, along] = [Number(floor(read.across)), Number(floor(read.along))];
  if (across <= 0 || along <= 0) return refuse({ is: "no-cloth", text: size });
  return { value: { fabric: name, across, along, count, note }, diagnostics: doubt(size, across, along) };
}

/** Usable width where none is said: inch by inch the usual 42 in, else what 110 cm cloth leaves. Common practice. */
function usableWidth(said: LengthUnit): Ticks {
  return familyOf(said) === "imperial" ? 42 * INCH : 107 * CENTIMETRE;
}

/** Cloth cut off the bolt: a length alone (`1/2 yd`), or `WOF x 20 in`. */
function wholeWidth(size: string, bare: LengthUnit): { along: Ticks; said: "in" | "cm" } | null {
  const [, after] = /^\s*(?:wof|width of fabric)\s*(?:x|×|by)\s*(.+)$/i.exec(size) ?? [];
  const [, first] = /^\s*(.+?)\s*(?:x|×|by)\s*(?:wof|width of fabric)\s*$/i.exec(size) ?? [];
  const read = parseLength(after ?? first ?? size, bare);
  // A number alone may be anything.
  if (!read.ok || (after === undefined && first === undefined && read.unit === null)) return null;
  const said = familyOf(read.unit ?? bare) === "imperial" ? "in" : "cm";
  return { along: Number(floor(read.value)), said };
}

/** A fat quarter is named both ways round in shops, and lies only one way. */
function doubt(size: string, across: Ticks, along: Ticks): Diagnostic[] {
  const quarter = TRADE_SIZES.find((trade) => trade.across === along && trade.along === across);
  if (quarter === undefined || quarter.across === null) return [];
  const unit = across % INCH === 0 ? "in" : "cm";
  const say = (ticks: Ticks) => formatMeasure(ticks, unit);
  const taken = { as: "written", across: say(across), along: say(along), name: quarter.name } as const;
  return [stashSizeTaken(size, taken)];
}
