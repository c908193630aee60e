import { useEffect, useState } from "preact/hooks";
import { readModel } from "../../edits/model.ts";
import { layOutQuilt, readSpecFile } from "../../planning.ts";
import { completed } from "../planner/complete.ts";
import { type Picture, pictureOf } from "../planner/picture.ts";
import { drawnSoFar } from "../planner/so-far.ts";
import { type Draft, drafts, putBack, takeAway, tookUp } from "../store.ts";
import { words } from "../words/index.ts";
import { takeText } from "./opening.ts";
import { QuiltPicture } from "./quilt-picture.tsx";

/** Most quilts shown, and most letters of one that is laid out for its picture. */
const MOST = 8;
const MOST_DRAWN = 60_000;

function topOf(text: string): Picture | null {
  if (text.length > MOST_DRAWN) return null;
  const whole = completed(text).text;
  const spec = readSpecFile(whole, "").value;
  const top = spec?.kind === "quilt" ? layOutQuilt(spec).value?.top : undefined;
  // A quilt with a fault in it is still known by its picture, as far as it can be drawn.
  return top === undefined ? drawnSoFar(readModel(whole)) : pictureOf(top);
}

interface OwnQuilts {
  kept: readonly Draft[];
  tops: ReadonlyMap<string, Picture | null>;
  setKept(kept: readonly Draft[]): void;
}

/** What this browser keeps, and each one's picture as soon as it is drawn. */
function useOwnQuilts(): OwnQuilts {
  const [kept, setKept] = useState<readonly Draft[]>([]);
  const [tops, setTops] = useState<ReadonlyMap<string, Picture | null>>(new Map());
  useEffect(() => {
    let over = false;
    const look = async () => {
      // A text that is no quilt was never one to go on with.
      const all = (await drafts()).filter(({ text }) => readModel(text).kind !== "unreadable").slice(0, MOST);
      if (over) return;
      setKept(all);
      for (const { key, text } of all) {
        await new Promise((resolve) => window.setTimeout(resolve));
        if (over) return;
        const top = topOf(text);
        setTops((before) => new Map([...before, [key, top]]));
      }
    };
    void look();
    return () => {
      over = true;
    };
  }, []);
  return { kept, tops, setKept };
}

/** Pictures of earlier states, one after another once they are looked at. */
function useOlderTops(older: Draft["older"], open: boolean): ReadonlyMap<number, Picture | null> {
  const [tops, setTops] = useState<ReadonlyMap<number, Picture | null>>(new Map());
  useEffect(() => {
    const [next] = open ? older.filter(({ at }) => !tops.has(at)) : [];
    if (next === undefined) return;
    const timer = window.setTimeout(() => setTops(new Map([...tops, [next.at, topOf(next.text)]])));
    return () => window.clearTimeout(timer);
  }, [older, open, tops]);
  return tops;
}

/** States of a quilt that were kept before the last, to go back to: each as it was, and when. */
function Older({ older }: Pick<Draft, "older">) {
  const [open, setOpen] = useState(false);
  const tops = useOlderTops(older, open);
  if (older.length === 0) return null;
  return (
    <details class="notes" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{words.earlier(older.length)}</summary>
      {older.map(({ at, text, work }) => {
        const top = tops.get(at) ?? null;
        return (
          <button key={at} type="button" class="act earlier" onClick={() => takeText(text, null, work)}>
            {top === null ? null : (
              <QuiltPicture top={top} model={readModel(text)} prefix={`at${at}-`} label="" tile={42} />
            )}
            {when(at)}
          </button>
        );
      })}
    </details>
  );
}

/** One quilt: its picture, which opens it, its earlier states, and taking it away. */
function OwnQuilt({ draft, top, drop }: { draft: Draft; top: Picture | null; drop: () => void }) {
  const { key, name, text, at, older, work } = draft;
  const called = name || words.theQuilt;
  return (
    <li>
      <button
        type="button"
        class="pick"
        aria-label={`${called}, ${when(at)}`}
        onClick={() => {
          tookUp(draft);
          takeText(text, key, work);
        }}
      >
        <span class="againpic">
          {top === null ? null : (
            <QuiltPicture top={top} model={readModel(text)} prefix={`${key}-`} label="" tile={42} />
          )}
        </span>
        <span class="pt">{called}</span>
        <span class="ps">{when(at)}</span>
      </button>
      <Older older={older} />
      <button
        type="button"
        class="act away"
        aria-label={`${words.takeAway}: ${called}, ${when(at)}`}
        onClick={drop}
      >
        {words.takeAway}
      </button>
    </li>
  );
}

/** Quilts of one's own, the newest first; one taken away can be put back. */
export function LeftOff() {
  const { kept, tops, setKept } = useOwnQuilts();
  const [gone, setGone] = useState<Draft | null>(null);
  if (kept.length === 0 && gone === null) return null;
  const drop = (draft: Draft) => {
    void takeAway(draft.key);
    setKept(kept.filter((one) => one.key !== draft.key));
    setGone(draft);
  };
  return (
    <section class="again" aria-label={words.leftOff}>
      <h2>{words.leftOff}</h2>
      <ul>
        {kept.map((draft) => (
          <OwnQuilt
            key={draft.key}
            draft={draft}
            top={tops.get(draft.key) ?? null}
            drop={() => drop(draft)}
          />
        ))}
      </ul>
      {gone === null ? null : (
        <p class="row" role="status">
          {words.tookAway(gone.name || words.theQuilt)}
          <button
            type="button"
            class="act"
            onClick={() => {
              void putBack(gone);
              setKept([...kept, gone].sort((a, b) => b.at - a.at));
              setGone(null);
            }}
          >
            {words.putBack}
          </button>
        </p>
      )}
    </section>
  );
}

function when(at: number): string {
  const [then, now] = [new Date(at), new Date()];
  const time = `${then.getHours()}:${String(then.getMinutes()).padStart(2, "0")}`;
  if (then.toDateString() === now.toDateString()) return time;
  return `${then.getFullYear()}-${String(then.getMonth() + 1).padStart(2, "0")}-${String(then.getDate()).padStart(2, "0")} ${time}`;
}
