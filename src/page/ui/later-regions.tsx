import { useEffect } from "preact/hooks";
import type { Shown, ShowWhat } from "../planner/messages.ts";
import { words } from "../words/index.ts";
import { sessionInHand } from "./actions.ts";
import { seenPhotos } from "./fabric/photo-fills.tsx";
import * as state from "./state.ts";
import { Label } from "./steps.tsx";

/** What the worker draws for this region, asked for once there is a plan. */
export function useShown<W extends ShowWhat>(what: W): Extract<Shown, { what: W }> | null {
  const planned = state.planned.value;
  const photos = seenPhotos();
  useEffect(() => {
    if (planned) sessionInHand()?.show(what, photos);
  }, [planned, what, JSON.stringify(photos)]);
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
