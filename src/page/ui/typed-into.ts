import { readSpecFile } from "../../planning.ts";
import { words } from "../words/index.ts";
import { edit } from "./actions.ts";
import * as state from "./state.ts";

/** Letters of what was typed that are said again. */
const MOST_TOLD = 60;

/** Errors a text has, by place and code: what was wrong before is no fault of what is typed now. */
function errorsIn(text: string): Set<string> {
  const { diagnostics } = readSpecFile(text, "");
  return new Set(
    diagnostics.filter(({ severity }) => severity === "error").map(({ code, path }) => `${code} ${path}`),
  );
}

/** Takes what was typed into a field, or refuses it there: the field is then as it was, and why is said. */
export function typedInto(
  field: HTMLInputElement | HTMLTextAreaElement,
  before: string,
  change: (text: string, wish: string) => string,
  label: string,
  wrong: (wish: string) => string,
): void {
  const wish = field.value.trim();
  if (wish === before) return;
  const now = errorsIn(state.text.value);
  if ([...errorsIn(change(state.text.value, wish))].some((error) => !now.has(error))) {
    field.value = before;
    state.said.value = wrong(wish);
    return;
  }
  // Words of several lines are seen where they were typed.
  const told = wish.includes("\n") || wish.length > MOST_TOLD ? "" : `: ${wish || words.usual}`;
  edit((text) => change(text, wish), `${label}${told}.`);
}
