/** Every state of a text since it was opened, and where in them one is. No end in either direction. */
export interface History {
  /** A new state after the one in hand; states that were undone are dropped. */
  push(text: string, what: string): void;
  /** The state before, with what it takes back; null at the beginning. */
  undo(): { text: string; what: string } | null;
  redo(): { text: string; what: string } | null;
  canUndo(): boolean;
  canRedo(): boolean;
}

/** @param join states told with the same word follow one another as one, as letters typed into a text do */
export function historyOf(first: string, join: (what: string) => boolean = () => false): History {
  const states = [{ text: first, what: "" }];
  let at = 0;
  return {
    push(text, what) {
      const now = states[at];
      if (now?.text === text) return;
      states.length = at + 1;
      if (join(what) && now?.what === what && at > 0) states[at] = { text, what };
      else {
        states.push({ text, what });
        at += 1;
      }
    },
    undo() {
      const now = states[at];
      const before = states[at - 1];
      if (now === undefined || before === undefined) return null;
      at -= 1;
      return { text: before.text, what: now.what };
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
