import { forgetFile, type Opened, openFile } from "../files.ts";
import { CLASS, draftOf, newKey, tookUp } from "../store.ts";
import { words } from "../words/en.ts";
import { begin, sayOfWork } from "./actions.ts";
import * as state from "./state.ts";

/** Puts what was opened on the table, or says why it cannot be. The file itself is never touched. */
export function take(opened: Opened): void {
  if (opened === null) return;
  if ("problem" in opened) {
    state.said.value = opened.problem;
    return;
  }
  if (state.forClass.value && !isWorkFile(opened.text)) {
    state.said.value = words.classOnly;
    return;
  }
  if (isWorkFile(opened.text)) {
    takeWork(opened.text);
    return;
  }
  begin(opened.text, opened.name, newKey());
  const { kind } = state.model.value;
  if (kind === "quilt") {
    state.said.value = words.opened(opened.name);
    return;
  }
  state.said.value = kind === "cut-list" ? words.notQuilt : words.unreadable(opened.name);
  state.textOpen.value = true;
}

const isWorkFile = (text: string): boolean => /^format: crossgrain work\s*$/m.test(text.slice(0, 2000));

/** A file of the work goes to the quilt on the table. */
function takeWork(text: string): void {
  if (state.region.value === "first") {
    state.said.value = words.workAlone;
    return;
  }
  sayOfWork(text, words.workOpened);
  state.region.value = "cut";
}

export async function openFromDisk(): Promise<void> {
  take(await openFile());
}

/** A quilt handed to a class: her own ticks are kept in her own browser, by what the quilt says. */
export async function takeForClass(text: string): Promise<void> {
  state.forClass.value = true;
  const bytes = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  const mark = [...new Uint8Array(bytes.slice(0, 12))].map((byte) => byte.toString(16).padStart(2, "0"));
  const key = `${CLASS}${mark.join("")}`;
  const kept = await draftOf(key);
  if (kept !== null) tookUp(kept);
  forgetFile();
  begin(text, "", key, kept?.work ?? "");
  state.region.value = "cut";
}

/** A quilt from the shelf or from those left off, with no file yet. */
export function takeText(text: string, key: string | null, work = ""): void {
  forgetFile();
  begin(text, "", key ?? newKey(), work);
}
