import { useEffect, useState } from "preact/hooks";
import { readModel } from "../../edits/model.ts";
import { layOutQuilt, readSpecFile } from "../../planning.ts";
import { completed } from "../planner/complete.ts";
import { type Picture, pictureOf } from "../planner/picture.ts";
import { type Draft, drafts, putBack, takeAway, tookUp } from "../store.ts";
import { words } from "../words/index.ts";
import { takeText } from "./opening.ts";
import { QuiltPicture } from "./quilt-picture.tsx";

/** Most quilts shown, and most letters of one that is laid out for its picture. */
const MOST = 8;
const MOST_DRAWN = 60_000;

function topOf(text: string): Picture | null {
  if (text.length > MOST_DRAWN) return null;
  const spec = readSpecFile(completed(text).text, "").value;
  const top = spec?.kind === "quilt" ? layOutQuilt(spec).value?.top : undefined;
  return top === undefined ? null : pictureOf(top);
}

/** Quilts of one's own, the newest first, each with its picture as soon as it is drawn. */
export function LeftOff() {
  const [kept, setKept] = useState<readonly Draft[]>([]);
  const [tops, setTops] = useState<ReadonlyMap<string, Picture | null>>(new Map());
  const [gone, setGone] = useState<Draft | null>(null);
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
  if (kept.length === 0 && gone === null) return null;
  return (
    <section class="again" aria-label={words.leftOff}>
      <h2>{words.leftOff}</h2>
      <ul>
        {kept.map((draft) => {
          const { key, name, text, at, older, work } = draft;
          const top = tops.get(key) ?? null;
          const called = name || words.theQuilt;
          return (
            <li key={key}>
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
              {older.length === 0 ? null : (
                <details class="notes">
                  <summary>{words.earlier(older.length)}</summary>
                  {older.map((one) => (
                    <button
                      key={one.at}
                      type="button"
                      class="act"
                      onClick={() => takeText(one.text, null, one.work)}
                    >
                      {when(one.at)}
                    </button>
                  ))}
                </details>
              )}
              <button
                type="button"
                class="act away"
                aria-label={`${words.takeAway}: ${called}, ${when(at)}`}
                onClick={() => {
                  void takeAway(key);
                  setKept(kept.filter((one) => one.key !== key));
                  setGone(draft);
                }}
              >
                {words.takeAway}
              </button>
            </li>
          );
        })}
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
