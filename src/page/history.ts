import { NO_PHOTOS, type Photos } from "./photos.ts";

/** A state of what is undone together: the quilt's text, what was said of the work on it, pictures of its fabrics. */
export interface Kept {
  text: string;
  work: string;
  photos: Photos;
}

/** Every state since a quilt was opened, and where in them one is. No end in either direction. */
export interface History {
  /** A new state after the one in hand; states that were undone are dropped. What is not given stays as it is. */
  push(text: string, what: string, work?: string, photos?: Photos): void;
  /** The gesture that made the state in hand goes on, as a hand drawn over more and more patches. */
  grow(text: string, what: string): void;
  /** What made the state in hand, where that is known only afterwards. */
  name(what: string): void;
  /** The state in hand has another text of the work, which means the same. */
  amend(work: string): void;
  /** Pictures that were there from the beginning, and come in only now. */
  withPhotos(photos: Photos): void;
  /** The state before, with what it takes back; null at the beginning. */
  undo(): (Kept & { what: string }) | null;
  redo(): (Kept & { what: string }) | null;
  canUndo(): boolean;
  canRedo(): boolean;
}

/** @param join states told with the same word follow one another as one, as letters typed into a text do */
export function historyOf(first: string, join: (what: string) => boolean = () => false, work = ""): History {
  const states = [{ text: first, work, photos: NO_PHOTOS, what: "" }];
  let at = 0;
  return {
    push(text, what, work, photos) {
      const now = states[at];
      const next = {
        text,
        work: work ?? now?.work ?? "",
        photos: photos ?? now?.photos ?? NO_PHOTOS,
        what,
      };
      if (now?.text === next.text && now.work === next.work && now.photos === next.photos) return;
      states.length = at + 1;
      if (join(what) && now?.what === what && at > 0) states[at] = next;
      else {
        states.push(next);
        at += 1;
      }
    },
    grow(text, what) {
      const now = states[at];
      if (now === undefined || at === 0) return;
      states.length = at + 1;
      states[at] = { ...now, text, what };
    },
    name(what) {
      const now = states[at];
      if (now !== undefined && at > 0) states[at] = { ...now, what };
    },
    amend(work) {
      const now = states[at];
      if (now !== undefined) states[at] = { ...now, work };
    },
    withPhotos(photos) {
      states.forEach((state, i) => {
        states[i] = { ...state, photos: { ...photos, ...state.photos } };
      });
    },
    undo() {
      const now = states[at];
      const before = states[at - 1];
      if (now === undefined || before === undefined) return null;
      at -= 1;
      return { ...before, what: now.what };
    },
    redo() {
      const next = states[at + 1];
      if (next === undefined) return null;
      at += 1;
      return next;
    },
    canUndo: () => at > 0,
    canRedo: () => at < states.length - 1,
  };
}
