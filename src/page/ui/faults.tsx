import { words } from "../words/index.ts";
import { edit } from "./actions.ts";
import * as state from "./state.ts";
import { showLine } from "./text-place.ts";

function mend(line: number, from: string, to: string): void {
  const changed = edit((text) => {
    const lines = text.split("\n");
    const own = lines[line - 1];
    if (own === undefined || !own.includes(from)) return text;
    lines[line - 1] = own.replace(from, to);
    return lines.join("\n");
  });
  state.said.value = changed ? `${from} → ${to}` : words.notMended(from);
  if (!changed) showLine(line);
}

type Fault = (typeof state.faults.value)[number];

/** A hint in the file's own spelling helps beside the text; beside the drawing the drawing is what is changed. */
const speaksOfText = (hint: string): boolean => hint.includes("`") && !state.textOpen.value;

/** One thing to be put right, with its mending where one word is all it takes, and the way to its place in the text. */
function FaultLine({ fault, number }: { fault: Fault; number: number }) {
  const { message, hint, at, mend: better } = fault;
  return (
    <li>
      <span class="pinno" aria-hidden="true">
        {number}
      </span>
      <div>
        <p>{message}</p>
        {speaksOfText(hint) ? null : <p class="quiet">{hint}</p>}
        <div class="row">
          {better === null || at === null ? null : (
            <button type="button" class="act" onClick={() => mend(at.line, better.from, better.to)}>
              {words.mend}: {better.to}
            </button>
          )}
          {at === null ? null : (
            <button type="button" class="act" onClick={() => showLine(at.line)}>
              {words.showInText}
            </button>
          )}
        </div>
      </div>
    </li>
  );
}

/** What has to be put right, numbered as in the text, in words that say what to do; then what is good to know. */
export function Faults() {
  const all = state.faults.value;
  const errors = all.filter(({ severity }) => severity === "error");
  const notes = all.filter(({ severity, code }) => severity !== "error" && code !== "FABRIC-UNUSED");
  if (errors.length === 0 && notes.length === 0 && state.broken.value === "") return null;
  return (
    <div class="faultbox">
      {state.broken.value === "" ? null : <p class="alarm">{words.broken}</p>}
      {errors.length === 0 ? null : (
        <>
          <h3>{words.faultsTitle}</h3>
          <ol class="faults">
            {errors.map((fault, i) => (
              <FaultLine key={i} fault={fault} number={i + 1} />
            ))}
          </ol>
        </>
      )}
      {notes.length === 0 ? null : (
        <details class="notes">
          <summary>
            {words.notesTitle} ({notes.length})
          </summary>
          <ul>
            {notes.map(({ message, hint }, i) => (
              <li key={i}>
                {message} {speaksOfText(hint) ? null : <span class="quiet">{hint}</span>}
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
