import { computed } from "@preact/signals";
import { get, set } from "idb-keyval";
import {
  addCloth,
  emptyStash,
  printStash,
  readCloth,
  readStash,
  removeCloth,
  type Stash,
  type StashCloth,
  wordAll,
} from "../../../planning.ts";
import { type Opened, openTable, saveOther } from "../../files.ts";
import { tongue, words } from "../../words/index.ts";
import { showDrawer } from "../actions.ts";
import * as state from "../state.ts";
import { sizeSaid } from "../steps.tsx";

const KEY = "drawer";
const USUAL_NAME = "drawer.csv";

/** The table as it is read in the quilt's measure; null where there is none. */
export const drawerRead = computed(() => {
  const { name, text } = state.drawer.value;
  return text === "" ? null : readStash(text, name, state.model.value.unit).value;
});

/** The fabric of the table, row by row. */
export const clothsOf = (stash: Stash | null): StashCloth[] =>
  stash?.rows.flatMap(({ cloth }) => (cloth === null || cloth.count === 0 ? [] : [cloth])) ?? [];

/** Every change keeps the table at once; what it was before is there to go back to. */
function change(name: string, text: string, say: string): void {
  state.drawerBefore.value = state.drawer.value;
  showDrawer(name, text);
  set(KEY, { name, text }).catch(() => {
    state.keptAt.value = words.notKept;
  });
  state.said.value = say;
}

/** The drawer as it was left in this browser. */
export async function takeDrawer(): Promise<void> {
  try {
    const kept = await get<{ name: string; text: string }>(KEY);
    if (kept !== undefined && state.drawer.value.text === "") showDrawer(kept.name, kept.text);
  } catch {
    // A browser that keeps nothing for a page has no drawer.
  }
}

/** Takes a table that was opened, or says why it is none; what is in the drawer stays then. */
export function openDrawer(opened: Opened): void {
  if (opened === null) return;
  if ("problem" in opened) {
    state.said.value = opened.problem;
    return;
  }
  const { name, text } = opened;
  const { value, diagnostics } = readStash(text, name, state.model.value.unit);
  if (value === null) {
    const [why] = wordAll(diagnostics, tongue);
    state.said.value = words.cloth.drawerRefused(name, why?.message ?? "");
    return;
  }
  const bad = diagnostics.filter(({ code }) => code === "STASH-ROW-UNREADABLE").length;
  const count = clothsOf(value).reduce((sum, cloth) => sum + cloth.count, 0);
  const warned = bad === 0 ? "" : ` ${words.cloth.drawerWarned(bad)}`;
  change(name, text, `${words.cloth.drawerOpened(name, count)}${warned}`);
}

export async function chooseDrawer(): Promise<void> {
  openDrawer(await openTable());
}

/** The table as it stands, rows that were not changed letter by letter as they were. */
export async function saveDrawer(): Promise<void> {
  const { name, text } = state.drawer.value;
  await saveOther(new Blob([text], { type: "text/csv" }), name);
}

const spoken = (): "in" | "cm" => (["in", "yd"].includes(state.model.value.unit) ? "in" : "cm");

/** Puts a piece in, of a size as it is said at the command line; why not is words.cloth. */
export function putIn(fabric: string, size: string, count: string): boolean {
  const { value, diagnostics } = readCloth(fabric, size, Number(count || "1"), "", state.model.value.unit);
  if (value === null) {
    state.said.value = wordAll(diagnostics, tongue)
      .map(({ message }) => message)
      .join(" ");
    return false;
  }
  const stash = addCloth(drawerRead.value ?? emptyStash(), value, spoken());
  const told = sizeSaid(value.across, value.along);
  change(
    state.drawer.value.name || USUAL_NAME,
    printStash(stash),
    words.cloth.drawerAdded(value.fabric, told),
  );
  return true;
}

/** Takes one piece out. */
export function takeOut(cloth: StashCloth): void {
  const stash = drawerRead.value;
  const left = stash === null ? null : removeCloth(stash, { ...cloth, count: 1 });
  if (left === null) return;
  const told = sizeSaid(cloth.across, cloth.along);
  change(state.drawer.value.name, printStash(left), words.cloth.drawerTook(cloth.fabric, told));
}

/** The drawer as it was before the last change. */
export function putBackDrawer(): void {
  const before = state.drawerBefore.value;
  if (before === null) return;
  change(before.name, before.text, words.cloth.drawerBack);
  state.drawerBefore.value = null;
}
