import { batch } from "@preact/signals";
import { type History, historyOf, type Kept } from "../history.ts";
import { keepPhotos, NO_PHOTOS, type Photos, photosOf } from "../photos.ts";
import type { Mat } from "../planner/mat.ts";
import type { ChooseWhat } from "../planner/messages.ts";
import type { Session } from "../session.ts";
import { keepSewn, NOTHING_SEWN, type Sewn, sewnOf } from "../sewn.ts";
import { keepDraft, newKey } from "../store.ts";
import { words } from "../words/index.ts";
import { forgetTextures } from "./fabric/texture-numbers.ts";
import * as state from "./state.ts";

let history: History = historyOf("");
let session: Session | null = null;
/** Under which the quilt in hand is kept in this browser. */
let draft = "";

/** Letters typed one after another are undone together. */
const TYPED = "typed";

export function useSession(opened: Session): void {
  session = opened;
}

export const sessionInHand = (): Session | null => session;
export const canUndo = (): boolean => state.text.value !== "" && history.canUndo();
export const canRedo = (): boolean => state.text.value !== "" && history.canRedo();
export const draftInHand = (): string => draft;

/** From now on this window keeps the quilt as one of its own. */
export function keepApart(): void {
  draft = newKey();
  state.elsewhere.value = "";
  keepDraft(draft, state.text.value, state.model.value.name, state.work.value);
  if (state.photos.value !== NO_PHOTOS) keepPictures(state.photos.value);
}

function keepPictures(photos: Photos): void {
  state.photosLost.value = false;
  keepPhotos(draft, photos, () => {
    state.photosLost.value = true;
  });
}

/** Pictures as they are from now on; kept at once. */
function showPhotos(photos: Photos): void {
  state.photos.value = photos;
  keepPictures(photos);
}

/** A change to the pictures of fabrics, and to the text with them: one gesture, one undo away. */
export function picture(
  photos: Photos,
  say: string,
  change: (text: string) => string = (text) => text,
): void {
  if (state.forClass.value) {
    state.said.value = words.classOnly;
    return;
  }
  const text = change(state.text.value);
  history.push(text, say, undefined, photos);
  showPhotos(photos);
  if (text !== state.text.value) show(text);
  else keepDraft(draft, text, state.model.value.name, state.work.value);
  state.said.value = say;
}

/** Another window has kept the same quilt meanwhile: neither overwrites the other. */
export function keptElsewhere(key: string): void {
  if (key !== draft) return;
  keepApart();
  state.elsewhere.value = words.keptApart;
}

/** The last question asked of the planner: answers to older ones are let go. */
let asked = 0;
export const isCurrent = (id: number): boolean => id === asked;

/** What was said of the work has changed: it is kept at once, and the mat worked out again. */
function showWork(work: string, otherwise?: string): void {
  state.work.value = work;
  askMat(otherwise);
  keepDraft(draft, state.text.value, state.model.value.name, work);
}

let matAsked = 0;
export const isMat = (id: number): boolean => id === matAsked;

/** Asks for the mat, where there is a plan to cut from. */
export function askMat(otherwise?: string): void {
  if (session !== null && state.planned.value) matAsked = session.mat(state.work.value, otherwise);
}

/** The mat has come: what it was worked out from is what was said. */
export function laidMat(mat: Mat): void {
  if (mat.work !== state.work.value) {
    history.amend(mat.work);
    state.work.value = mat.work;
    keepDraft(draft, state.text.value, state.model.value.name, mat.work);
  }
  state.mat.value = mat;
}

/**
 * Something said of the work, told in a sentence; one undo away.
 * @param otherwise text that says the same in another order, for where the first does not fit the diagrams
 */
export function sayOfWork(work: string, say: string, otherwise?: string): void {
  if (work === state.work.value) return;
  history.push(state.text.value, say, work);
  showWork(work, otherwise);
  state.said.value = say;
}

function show(text: string, keep = true): void {
  batch(() => {
    // A change is told against the last amounts that were known for sure.
    if (state.progress.value === "done" || state.progress.value === "so-far")
      state.amountsBefore.value = state.amounts.value;
    state.text.value = text;
    state.progress.value = "before";
    state.planned.value = false;
    state.shown.value = null;
    state.mat.value = null;
    state.suggestions.value = [];
    state.savings.value = null;
    state.choosing.value = null;
    state.cover.value = NOT_ASKED;
    state.kits.value = NO_KITS;
    state.broken.value = "";
  });
  session?.tryTexts([]);
  askPlan();
  if (keep) keepDraft(draft, text, state.model.value.name, state.work.value);
  else state.keptAt.value = "";
}

let asking = false;

/** Many edits in one turn of the hand (a drag) are one question. */
function askPlan(): void {
  if (asking) return;
  asking = true;
  queueMicrotask(() => {
    asking = false;
    if (session !== null && state.text.value !== "") asked = session.plan(state.text.value, "quilt.yaml");
  });
}

/** What there is of a quilt besides its text, and how it is kept. */
interface Begun {
  text: string;
  /** Under which it is kept in this browser. */
  key: string;
  /** Name of its file; empty where it has none. */
  name?: string;
  /** What was said of the work on it. */
  work?: string;
  /** False: it is kept once it is changed, as one of those to begin with. */
  keep?: boolean;
  /** Pictures that came with it; those of this browser where none did. */
  photos?: Photos | null;
}

/** Puts a quilt on the table. */
export function begin({ text, key, name = "", work = "", keep = true, photos = null }: Begun): void {
  history = historyOf(text, (what) => what === TYPED, work);
  draft = key;
  batch(() => {
    state.work.value = work;
    state.photosLost.value = false;
    state.onMat.value = "";
    state.strip.value = null;
    state.bagInHand.value = null;
    state.amounts.value = null;
    state.amountsBefore.value = null;
    state.laid.value = { top: null, stale: false, empty: 0 };
    state.faults.value = [];
    state.fileName.value = name;
    state.placed.value = null;
    state.borderInHand.value = null;
    state.opened.value = null;
    state.waysOf.value = "";
    state.square.value = { column: 0, row: 0 };
    state.firstFabric.value = 0;
    state.secondFabric.value = 1;
    state.tool.value = "lay";
    state.said.value = "";
    state.onDisk.value = null;
    state.unsaved.value = false;
    state.elsewhere.value = "";
    state.progress.value = "before";
    state.region.value = "draw";
  });
  forgetTextures();
  state.photos.value = photos ?? NO_PHOTOS;
  if (photos === null)
    void photosOf(key).then((kept) => {
      if (draft !== key || kept === NO_PHOTOS) return;
      history.withPhotos(kept);
      state.photos.value = { ...kept, ...state.photos.value };
    });
  else {
    history.withPhotos(photos);
    keepPictures(photos);
  }
  state.sewn.value = NOTHING_SEWN;
  void sewnOf(key).then((sewn) => {
    if (draft === key) state.sewn.value = sewn;
  });
  show(text, keep);
  const [block] = state.model.value.blocks;
  const empty = state.model.value.blocks.some(({ empties }) => empties.length > 0);
  state.sheet.value = empty && block !== undefined ? { block: block.key } : "quilt";
}

/**
 * One gesture: an edit of the text, told in a sentence.
 * @param goesOn the edit belongs to the gesture before it, and is undone with it
 * @returns whether anything changed
 */
export function edit(
  change: (text: string) => string,
  say: string | (() => string) = "",
  goesOn = false,
): boolean {
  if (state.forClass.value) {
    state.said.value = words.classOnly;
    return false;
  }
  const before = state.text.value;
  const after = change(before);
  const changed = after !== before;
  if (changed) {
    const what = typeof say === "string" ? say : "";
    if (goesOn) history.grow(after, what);
    else history.push(after, what);
    show(after);
  }
  if (!changed && !state.model.value.sound) {
    state.said.value = words.textFirst;
    return false;
  }
  const sentence = typeof say === "string" ? say : say();
  if (changed && typeof say !== "string") history.name(sentence);
  if (sentence !== "") state.said.value = sentence;
  return changed;
}

/** How far the sewing is; kept at once. */
export function sew(change: Partial<Sewn>): void {
  state.sewn.value = { ...state.sewn.value, ...change };
  if (state.keptAt.value === "") keepDraft(draft, state.text.value, state.model.value.name, state.work.value);
  keepSewn(draft, state.sewn.value, () => {
    state.keptAt.value = words.notKept;
  });
}

/** Typing in the text itself. */
export function typed(text: string): void {
  if (text === state.text.value || state.forClass.value) return;
  history.push(text, TYPED);
  show(text);
}

/** Goes to a state there was: the drawing is planned again only where it is another. */
function goTo({ text, work, photos }: Kept): void {
  if (photos !== state.photos.value) {
    showPhotos(photos);
    if (text === state.text.value && work === state.work.value) return;
  }
  if (text === state.text.value) {
    showWork(work);
    return;
  }
  state.work.value = work;
  show(text);
}

const wentTo = (way: string, what: string): string =>
  what === "" ? `${way}.` : `${way}: ${what === TYPED ? words.textTitle : what}`;

export function undo(): void {
  const back = history.undo();
  if (back === null) {
    state.said.value = words.nothingToUndo;
    return;
  }
  goTo(back);
  state.said.value = wentTo(words.undo, back.what);
}

export function redo(): void {
  const on = history.redo();
  if (on === null) {
    state.said.value = words.nothingToRedo;
    return;
  }
  goTo(on);
  state.said.value = wentTo(words.redo, on.what);
}

let savingsNumber = 0;
export const savingsAsked = (): number => savingsNumber;

/** Looks for changes that buy less; they come in as they are found. */
export function lookForSavings(): void {
  if (session === null) return;
  state.savings.value = { done: 0, of: 0, finished: false, found: [] };
  savingsNumber = session.save(state.text.value);
}

let choosingNumber = 0;
export const choosingAsked = (): number => choosingNumber;

/** Sets ways of making, or turnings, beside one another. */
export function lookForWays(what: ChooseWhat): void {
  if (session === null) return;
  state.choosing.value = { what, done: 0, of: 0, chosen: null };
  choosingNumber = session.choose(what, state.text.value);
}

/** From where a unit is sewn to the other ways of making it. */
export function seeWaysOf(unit: string): void {
  state.waysOf.value = unit;
  state.region.value = "fabric";
  if (state.choosing.value?.what !== "ways") lookForWays("ways");
}

const NO_KITS = { asked: false, made: null };

let kitsNumber = 0;
export const kitsAsked = (): number => kitsNumber;

/** Plans the kits of the class, and writes their papers. */
export function planKits(): void {
  if (session === null) return;
  state.kits.value = { asked: true, made: null };
  kitsNumber = session.kits(state.text.value, "quilt.yaml");
}

const NOT_ASKED = { asked: false, covered: null, failed: false };

let coverNumber = 0;
export const coverAsked = (): number => coverNumber;

/** Plans the quilt with the drawer used first. */
export function lookInDrawer(): void {
  if (session === null) return;
  state.cover.value = { ...NOT_ASKED, asked: true };
  coverNumber = session.cover(state.text.value, state.drawer.value.text);
}

/** The drawer as it is now: what it covers is to be asked anew. */
export function showDrawer(name: string, text: string): void {
  state.drawer.value = { name, text };
  state.cover.value = NOT_ASKED;
}
