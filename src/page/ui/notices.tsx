import { type OnDisk, seenOnDisk } from "../files.ts";
import { words } from "../words/index.ts";
import { edit, keepApart } from "./actions.ts";
import { fileRefused } from "./opening.ts";
import { saveAsDownload } from "./selvage.tsx";
import * as state from "./state.ts";

function answered(found: OnDisk): void {
  seenOnDisk(found);
  state.onDisk.value = null;
}

/** A file that is no quilt: what lies on the table is still there. */
export function Refused() {
  const why = fileRefused.value;
  if (why === "") return null;
  return (
    <div class="notice" role="alert">
      <span>{why}</span>
      <button type="button" class="act" onClick={() => (fileRefused.value = "")}>
        {words.understood}
      </button>
    </div>
  );
}

/** What happened to the quilt elsewhere, with what can be done: nothing is taken or overwritten unasked. */
export function Notices() {
  const found = state.onDisk.value;
  return (
    <>
      {found === null ? null : (
        <div class="notice" role="alert">
          <span>{words.diskChanged(found.name)}</span>
          <button
            type="button"
            class="act"
            onClick={() => {
              answered(found);
              edit(() => found.text, words.diskTaken);
            }}
          >
            {words.takeDisk}
          </button>
          <button type="button" class="act" onClick={() => answered(found)}>
            {words.keepMine}
          </button>
        </div>
      )}
      {!state.unsaved.value ? null : (
        <div class="notice" role="alert">
          <span>{words.notSaved}</span>
          <button type="button" class="act" onClick={saveAsDownload}>
            {words.saveAsDownload}
          </button>
          <button type="button" class="act" onClick={() => (state.unsaved.value = false)}>
            {words.understood}
          </button>
        </div>
      )}
      {state.elsewhere.value === "" ? null : (
        <div class="notice" role="alert">
          <span>{state.elsewhere.value}</span>
          {state.elsewhere.value === words.elsewhere ? (
            <button type="button" class="act" onClick={keepApart}>
              {words.keepApart}
            </button>
          ) : null}
        </div>
      )}
    </>
  );
}
