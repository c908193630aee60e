import { useEffect, useRef } from "preact/hooks";
import { wordAll } from "../../../planning.ts";
import type { MatFabric } from "../../planner/mat.ts";
import { tongue, words } from "../../words/index.ts";
import { undo } from "../actions.ts";
import { toldAtTheMat } from "../fabric/told-at-the-mat.ts";
import * as state from "../state.ts";
import { Label } from "../steps.tsx";
import { beginAnew } from "./at-the-mat.ts";

/** Told in words of the page: its hint speaks of files and folders. */
const OTHER_PLAN = "WORK-OTHER-PLAN";

/** What was said of another drawing: the strips told of are not on the mat, and that comes before all else. */
export function Misfit() {
  const { problems = [] } = state.mat.value ?? {};
  if (problems.length === 0) return null;
  return (
    <div class="answer misfit" role="alert">
      <h3>{words.workProblem}</h3>
      <ul>
        {wordAll(problems, tongue).map(({ code, message, hint }) => (
          <li key={message}>
            {code === OTHER_PLAN ? words.otherPlan(toldAtTheMat(state.work.value)) : `${message} ${hint}`}
          </li>
        ))}
      </ul>
      <div class="row">
        <Label onClick={undo}>{words.undo}</Label>
        <Label onClick={beginAnew}>{words.anew}</Label>
      </div>
    </div>
  );
}

/** What an entry changed, told at once: what there is to buy for it first, and the way back beside it. */
export function Changed({ fabric }: { fabric: MatFabric }) {
  const { changed = [] } = state.mat.value ?? {};
  const head = useRef<HTMLDivElement>(null);
  const told = changed.join();
  const before = useRef(told);
  // What was said just now comes into sight with the way back; what was said earlier stays where it is.
  useEffect(() => {
    if (told !== "" && told !== before.current) head.current?.scrollIntoView({ block: "nearest" });
    before.current = told;
  }, [told]);
  if (told === "") return null;
  return (
    <div class="answer" aria-live="polite">
      <div ref={head} class="row tight">
        <h3>{words.changedTitle}</h3>
        <Label onClick={undo}>{words.undo}</Label>
      </div>
      {changed[0]?.trim() !== fabric.name ? null : (
        <p class="of">{fabric.buy === "" ? words.isEnough : words.buyFor(fabric.buy)}</p>
      )}
      {changed.map((line, i) => (
        <p key={i} class={line.startsWith("  ") ? "" : "of"}>
          {line.trim()}
        </p>
      ))}
    </div>
  );
}
