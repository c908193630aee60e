import { describe, expect, test } from "vitest";
import { historyOf } from "../../src/page/history.ts";
import type { Answer, Ask } from "../../src/page/planner/messages.ts";
import { openSession } from "../../src/page/session.ts";

/** Workers that do what the test says, and a clock that moves when told. */
function stage() {
  const workers: { asks: Ask[]; ended: boolean; hear(answer: Answer): void; die(): void }[] = [];
  const heard: Answer[] = [];
  let timers: { after: number; call: () => void }[] = [];
  const session = openSession({
    start(hear, die) {
      const worker = { asks: [] as Ask[], ended: false, hear, die };
      workers.push(worker);
      return {
        post: (ask) => void worker.asks.push(ask),
        end: () => void Object.assign(worker, { ended: true }),
      };
    },
    later(after, call) {
      const timer = { after, call };
      timers.push(timer);
      return () => {
        timers = timers.filter((one) => one !== timer);
      };
    },
    heard: (answer) => void heard.push(answer),
    most: 1e6,
  });
  const wait = (milliseconds = 150) => {
    const due = timers.filter(({ after }) => after <= milliseconds);
    timers = timers.filter(({ after }) => after > milliseconds);
    for (const { call } of due) call();
  };
  const plansOf = (worker: number) =>
    workers[worker]!.asks.flatMap((ask) => (ask.kind === "plan" ? [ask.text] : []));
  return { workers, heard, session, wait, plansOf };
}

describe("a session", () => {
  test("has a spare from the start, and asks the worker in hand", () => {
    const { workers, session, plansOf } = stage();
    session.plan("a", "q");
    expect(workers).toHaveLength(2);
    expect([plansOf(0), plansOf(1)]).toEqual([["a"], []]);
  });

  test("takes the spare when a solve does not hear, and starts another", () => {
    const { workers, session, wait, plansOf } = stage();
    for (const worker of workers) worker.hear({ kind: "ready" });
    const first = session.plan("a", "q");
    workers[0]!.hear({ kind: "taken", id: first });
    session.plan("b", "q");
    wait();
    expect(workers[0]!.ended).toBe(true);
    expect(plansOf(1)).toEqual(["b"]);
    expect(workers).toHaveLength(3);
  });

  test("leaves a worker that hears in time", () => {
    const { workers, session, wait } = stage();
    for (const worker of workers) worker.hear({ kind: "ready" });
    const id = session.plan("a", "q");
    workers[0]!.hear({ kind: "taken", id });
    wait();
    expect(workers[0]!.ended).toBe(false);
  });

  test("a spare goes the way of a gesture once the plan stands, and only once", () => {
    const { workers, session } = stage();
    for (const worker of workers) worker.hear({ kind: "ready" });
    const planned = (id: number): Answer => ({
      ...{ kind: "planned", id, amounts: { fabrics: [], total: "" }, diagnostics: [], whole: true },
    });
    for (const text of ["a", "b"]) {
      const id = session.plan(text, "q");
      workers[0]!.hear({ kind: "taken", id });
      workers[0]!.hear(planned(id));
    }
    expect(workers[1]!.asks.filter(({ kind }) => kind === "warm")).toEqual([
      { kind: "warm", text: "a", name: "q" },
    ]);
  });

  test("waits for a spare that has not come up", () => {
    const { workers, session, wait, plansOf } = stage();
    session.plan("a", "q");
    wait();
    expect(workers[0]!.ended).toBe(false);
    workers[1]!.hear({ kind: "ready" });
    wait();
    expect(plansOf(1)).toEqual(["a"]);
  });

  test("a worker killed in the middle loses nothing: the spare is asked the same; in the end it is said", () => {
    const { workers, heard, session, plansOf } = stage();
    session.plan("a", "q");
    workers[0]!.die();
    expect(plansOf(1)).toEqual(["a"]);
    for (let i = 1; i < workers.length && i < 9; i++) workers[i]!.die();
    expect(heard.at(-1)?.kind).toBe("broken");
  });

  test("a worker that falls silent in the middle of a search is replaced; one that has done is left", () => {
    const { workers, session, wait, plansOf } = stage();
    for (const worker of workers) worker.hear({ kind: "ready" });
    const id = session.plan("a", "q");
    workers[0]!.hear({ kind: "taken", id });
    workers[0]!.hear({ kind: "kept", entries: [] });
    wait(60_000);
    expect(workers[0]!.ended).toBe(true);
    expect(plansOf(1)).toEqual(["a"]);
    workers[1]!.hear({ kind: "failed", id, diagnostics: [] });
    wait(60_000);
    expect(workers[1]!.ended).toBe(false);
  });

  test("results found by one worker reach the other and all later ones", () => {
    const { workers, session } = stage();
    session.plan("a", "q");
    const entries: Extract<Answer, { kind: "kept" }>["entries"] = [["job", {} as never]];
    workers[0]!.hear({ kind: "kept", entries });
    expect(workers[1]!.asks.at(-1)).toEqual({ kind: "keep", entries });
    workers[0]!.die();
    expect(workers[2]!.asks[0]).toMatchObject({ kind: "start", keeps: entries });
  });

  test("suggestions have a worker of their own, ended when the quilt changes", () => {
    const { workers, session } = stage();
    session.tryTexts([{ key: "k", text: "t" }]);
    expect(workers[2]!.asks.map(({ kind }) => kind)).toEqual(["start", "try"]);
    session.tryTexts([]);
    expect(workers[2]!.ended).toBe(true);
  });
});

describe("undo and redo", () => {
  test("go back to the first byte and forth to the last", () => {
    const history = historyOf("0");
    for (let i = 1; i <= 500; i++) history.push(String(i), `edit ${i}`);
    for (let i = 500; i >= 1; i--)
      expect(history.undo()).toMatchObject({ text: String(i - 1), what: `edit ${i}` });
    expect(history.undo()).toBeNull();
    for (let i = 1; i <= 500; i++) expect(history.redo()?.text).toBe(String(i));
    expect(history.redo()).toBeNull();
  });

  test("what was said of the work goes back with the text it was said beside", () => {
    const history = historyOf("a", undefined, "w0");
    history.push("a", "ticked", "w1");
    history.push("b", "drawn");
    expect(history.undo()).toMatchObject({ text: "a", work: "w1", what: "drawn" });
    expect(history.undo()).toMatchObject({ text: "a", work: "w0", what: "ticked" });
    history.push("a", "nothing new", "w0");
    expect(history.redo()).toMatchObject({ text: "a", work: "w1" });
  });

  test("typing goes back a run at a time, a gesture between ends the run", () => {
    const history = historyOf("", (what) => what === "typed");
    for (const text of ["a", "ab", "abc"]) history.push(text, "typed");
    history.push("abc!", "turned");
    history.push("abc!d", "typed");
    expect([history.undo()?.text, history.undo()?.text, history.undo()?.text]).toEqual(["abc!", "abc", ""]);
    expect(history.canUndo()).toBe(false);
  });

  test("a new edit after an undo drops what was undone", () => {
    const history = historyOf("a");
    history.push("b", "1");
    history.undo();
    history.push("c", "2");
    expect(history.canRedo()).toBe(false);
    expect(history.undo()?.text).toBe("a");
  });
});
