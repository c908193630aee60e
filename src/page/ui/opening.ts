import { signal } from "@preact/signals";
import { readModel } from "../../edits/model.ts";
import { WORK_FORMAT } from "../../planning.ts";
import { changedOnDisk, forgetFile, type OnDisk, type Opened, openFile, rememberFile } from "../files.ts";
import type { Photos } from "../photos.ts";
import { EMPTY_SHEET, STARTS } from "../starts.ts";
import { CLASS, draftOf, newKey, tookUp } from "../store.ts";
import { words } from "../words/index.ts";
import { begin, sayOfWork } from "./actions.ts";
import { openDrawer } from "./fabric/drawer-hand.ts";
import * as state from "./state.ts";

/** Why the file opened last was not taken; empty where it was. */
export const fileRefused = signal("");

function refuse(why: string): void {
  const still = state.region.value === "first" ? "" : ` ${words.stillHere}`;
  fileRefused.value = `${why}${still}`;
  state.said.value = fileRefused.value;
}

/** A text with blocks or fabrics in it is a quilt or a cut list, whatever faults it has besides. */
const speaksOfCloth = (text: string): boolean => /^\s*["']?(blocks|fabrics)["']?\s*:/m.test(text);

/** Puts what was opened on the table, or says why it cannot be. The file itself is never touched. */
export function take(opened: Opened): void {
  if (opened === null) return;
  fileRefused.value = "";
  if ("problem" in opened) {
    refuse(opened.problem);
    return;
  }
  if (state.forClass.value && !isWorkFile(opened.text)) {
    state.said.value = words.classOnly;
    return;
  }
  if (/\.(csv|tsv)$/i.test(opened.name)) {
    openDrawer(opened);
    return;
  }
  if (isWorkFile(opened.text)) {
    takeWork(opened.text);
    return;
  }
  const { kind } = readModel(opened.text);
  if (kind === "unreadable" && !speaksOfCloth(opened.text)) {
    refuse(words.noQuilt(opened.name));
    return;
  }
  rememberFile(opened);
  begin({ text: opened.text, name: opened.name, key: newKey() });
  if (kind === "quilt") {
    state.said.value = words.opened(opened.name);
    return;
  }
  state.said.value = kind === "cut-list" ? words.notQuilt : words.unreadable(opened.name);
  state.textOpen.value = true;
}

const isWorkFile = (text: string): boolean =>
  text
    .slice(0, 2000)
    .split("\n")
    .some((line) => line.trimEnd() === `format: ${WORK_FORMAT}`);

/** A file of the work goes to the quilt on the table. */
function takeWork(text: string): void {
  if (state.region.value === "first") {
    state.said.value = words.workAlone;
    return;
  }
  state.region.value = "cut";
  sayOfWork(text, words.workOpened);
}

export async function openFromDisk(): Promise<void> {
  take(await openFile());
}

/** A quilt handed to a class: her own ticks are kept in her own browser, by what the quilt says. */
export async function takeForClass(text: string, photos: Photos | null): Promise<void> {
  state.forClass.value = true;
  const bytes = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  const mark = [...new Uint8Array(bytes.slice(0, 12))].map((byte) => byte.toString(16).padStart(2, "0"));
  const key = `${CLASS}${mark.join("")}`;
  const kept = await draftOf(key);
  if (kept !== null) tookUp(kept);
  forgetFile();
  begin({ text, key, work: kept?.work ?? "", photos });
  state.region.value = "cut";
}

/** A quilt from the shelf or from those left off, with no file yet. */
export function takeText(text: string, key: string | null, work = "", photos: Photos | null = null): void {
  forgetFile();
  fileRefused.value = "";
  const begun = STARTS.some((start) => start.text === text) || text === EMPTY_SHEET;
  begin({ text, key: key ?? newKey(), work, keep: !begun, photos });
}

/** Looks whether the file that is open here has been changed by something else. */
export async function lookOnDisk(): Promise<OnDisk | null> {
  const found = await changedOnDisk();
  state.onDisk.value = found !== null && found.text !== state.text.value ? found : null;
  return state.onDisk.value;
}
