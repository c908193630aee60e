import { strToU8, zipSync } from "fflate";
import { useEffect, useRef } from "preact/hooks";
import { saveOther } from "../files.ts";
import type { Shown, ShowWhat } from "../planner/messages.ts";
import { words } from "../words/en.ts";
import { sessionInHand } from "./actions.ts";
import { fileNameOf } from "./selvage.tsx";
import * as state from "./state.ts";
import { Label } from "./steps.tsx";

/** What the worker draws for this region, asked for once there is a plan. */
export function useShown<W extends ShowWhat>(what: W): Extract<Shown, { what: W }> | null {
  const planned = state.planned.value;
  useEffect(() => {
    if (planned) sessionInHand()?.show(what);
  }, [planned, what]);
  const shown = state.shown.value;
  return shown?.what === what ? (shown as Extract<Shown, { what: W }>) : null;
}

/** A finished drawing of the worker's own making, as it would be printed: on white in the dark too. */
export function Drawing({ svg, name }: { svg: string; name: string }) {
  return <div class="printed" role="figure" aria-label={name} dangerouslySetInnerHTML={{ __html: svg }} />;
}

export function Waiting() {
  const impossible = state.progress.value === "failed" || state.laid.value.empty > 0;
  return (
    <>
      <p class="quiet">{impossible ? words.noPlanYet : words.waiting}</p>
      {impossible ? <Label onClick={() => (state.region.value = "draw")}>{words.backToDraw}</Label> : null}
    </>
  );
}

/** The book to look at: the page lets no script run but its own. */
const withoutScripts = (html: string): string => html.replace(/<script[\s\S]*?<\/script>/g, "");

/** The book of the quilt, as it prints, to print or to hand on. */
export function PatternRegion() {
  const shown = useShown("book");
  const frame = useRef<HTMLIFrameElement>(null);
  const base = fileNameOf(state.model.value.name).replace(/\.yaml$/, "");
  const zip = ({ html, json }: { html: string; json: string }) => {
    const files = {
      [`${base}.yaml`]: strToU8(state.text.value),
      "book.html": strToU8(html),
      "plan.json": strToU8(json),
    };
    void saveOther(
      new Blob([zipSync(files) as Uint8Array<ArrayBuffer>], { type: "application/zip" }),
      `${base}.zip`,
    );
  };
  return (
    <div class="spread book">
      <section class="leaf" aria-label={words.patternTitle}>
        <h2>{words.patternTitle}</h2>
        {shown === null ? (
          <Waiting />
        ) : (
          <>
            <div class="row">
              <Label strong onClick={() => frame.current?.contentWindow?.print()}>
                {words.print2}
              </Label>
              <Label
                onClick={() => void saveOther(new Blob([shown.html], { type: "text/html" }), `${base}.html`)}
              >
                {words.saveBook}
              </Label>
              <Label onClick={() => zip(shown)}>{words.saveZip}</Label>
            </div>
            <iframe
              ref={frame}
              class="bookframe"
              title={words.bookTitle}
              srcdoc={withoutScripts(shown.html)}
            />
          </>
        )}
      </section>
    </div>
  );
}
