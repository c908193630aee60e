import type { BorderName } from "../../../diagnostics/purposes.ts";

/** A border by the maker's own name, else by its number from the inside. */
export function borderName(name: BorderName): string {
  return typeof name === "number" ? `Rand ${name}` : name;
}
