import { quote } from "./quote.ts";
import type { InFile } from "./reading.ts";
import type { Diagnostic } from "./types.ts";

function error(code: string, where: InFile, message: string, hint: string): Diagnostic {
  return { code, severity: "error", message, hint, path: where.path, at: where.at };
}

/** A line of `have` or `ready-cut` that says no cloth. */
export function clothUnreadable(
  where: InFile,
  key: "have" | "ready-cut",
  written: string,
  why: string,
): Diagnostic {
  const example =
    key === "have"
      ? "For example `fat quarter, 3`, `10 in squares, 12`, `2 1/2 in strips, 4` or `21 x 18 in, 2, trim 1/4 in`."
      : "For example `fat quarter, $3.50`, `10 in squares, $0.90, at most 42` or `2 1/2 in strips, $1.20`.";
  return error("CLOTH-UNREADABLE", where, `${quote(written)} is no cloth: ${why}.`, example);
}

/** Cloth ready cut can be weighed against yardage only when all of it has a price, in one currency. */
export function mixUnpriced(where: InFile, fabric: string, why: string): Diagnostic {
  return error(
    "MIX-UNPRICED",
    where,
    `${quote(fabric)}: what is sold ready cut cannot be weighed against the rest: ${why}.`,
    "Give each line of `ready-cut` a price and the fabric its `price`, all in one currency; or say `yardage: no`.",
  );
}
