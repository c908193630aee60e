import { useRef } from "preact/hooks";
import { setName } from "../../edits/fabric-edits.ts";
import { download, nameOnDisk, saveFile } from "../files.ts";
import { NO_PHOTOS } from "../photos.ts";
import { UNIT } from "../planner/picture.ts";
import { words } from "../words/index.ts";
import { canRedo, canUndo, edit, redo, undo } from "./actions.ts";
import { paintsOf, Textures } from "./draw/cloth.tsx";
import { Field } from "./field.tsx";
import { lookOnDisk, openFromDisk } from "./opening.ts";
import * as state from "./state.ts";
import { sizeSaid } from "./steps.tsx";

/** Takes a fabric in hand: the first becomes the second, as when a third is picked up. */
export function takeFabric(index: number): void {
  const { fabrics } = state.model.value;
  if (fabrics[index] === undefined) return;
  if (state.firstFabric.value !== index) {
    state.secondFabric.value = state.firstFabric.value;
    state.firstFabric.value = index;
  }
  state.said.value = words.fabricsInHand(
    fabrics[state.firstFabric.value]?.name ?? "",
    fabrics[state.secondFabric.value]?.name ?? "",
  );
}

function Dots() {
  const { fabrics } = state.model.value;
  const list = useRef<HTMLDivElement>(null);
  const move = (event: KeyboardEvent) => {
    const step = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    // Arrows look for a fabric; Enter takes it.
    const dots = [...(list.current?.querySelectorAll<HTMLElement>("button") ?? [])];
    const at = dots.indexOf(document.activeElement as HTMLElement);
    dots[(at + step + dots.length) % dots.length]?.focus();
  };
  return (
    <div ref={list} class="dots" role="group" aria-label={words.fabricsLabel} onKeyDown={move}>
      {fabrics.map((fabric, i) => {
        const first = i === state.firstFabric.value;
        const second = i === state.secondFabric.value && !first;
        const prefix = `dot${i}-`;
        const { ground, texture } = paintsOf(prefix, fabric);
        return (
          <button
            key={fabric.name}
            type="button"
            class={second ? "second" : ""}
            aria-pressed={first}
            title={`${fabric.name}: ${words.dotHelp}`}
            aria-label={`${words.dot(fabric.name, i + 1)}${second ? `, ${words.inHandSecond}` : ""}`}
            tabIndex={first ? 0 : -1}
            onClick={() => takeFabric(i)}
          >
            <svg width="24" height="24" viewBox="0 0 24 24" aria-hidden="true">
              <Textures prefix={prefix} fabrics={fabrics} tile={8} />
              <circle class="hair" cx="12" cy="12" r="11" fill={ground} />
              {texture === null ? null : <circle cx="12" cy="12" r="10.5" fill={texture} />}
            </svg>
            <span class="dotname">{fabric.name}</span>
            <span
              class="dotrank"
              data-rank={first ? words.inHandFirst : second ? words.inHandSecond : i < 9 ? i + 1 : ""}
            />
          </button>
        );
      })}
    </div>
  );
}

export async function save(asNew: boolean): Promise<void> {
  const { name } = state.model.value;
  // Asked at every save: what something else has written meanwhile is not written over unseen.
  if (!asNew && (await lookOnDisk()) !== null) return;
  const wished = state.fileName.value || fileNameOf(name);
  const saved = await saveFile(state.text.value, wished, asNew);
  state.unsaved.value = saved.where === "nowhere";
  if (saved.where === "nowhere") {
    state.said.value = words.notSaved;
    return;
  }
  state.fileName.value = saved.name;
  saySaved(saved.where === "downloads" ? words.savedAmongDownloads(saved.name) : words.saved(saved.name));
}

/** Saves among the downloads, where no place on disk was given or none is to be had. */
export function saveAsDownload(): void {
  const name = state.fileName.value || fileNameOf(state.model.value.name);
  state.unsaved.value = false;
  state.fileName.value = download(new Blob([state.text.value], { type: "text/yaml" }), nameOnDisk(name));
  saySaved(words.savedAmongDownloads(state.fileName.value));
}

/** Where the file is, and what it leaves behind. */
function saySaved(where: string): void {
  state.said.value = state.photos.value === NO_PHOTOS ? where : `${where} ${words.photosNotInFile}`;
}

export const fileNameOf = (name: string): string =>
  `${
    name
      .normalize("NFC")
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, "-")
      .replace(/^-|-$/g, "") || "quilt"
  }.yaml`;

/** The words of work there are: of a quilt handed to a class nothing is drawn. */
export const regionsThere = (): readonly state.Region[] =>
  state.forClass.value ? state.REGIONS.filter((one) => one !== "draw" && one !== "fabric") : state.REGIONS;

/** The upper selvage: name, the words of work, a dot for each fabric, what is kept. */
export function Selvage() {
  const { top } = state.laid.value;
  const region = state.region.value;
  const { name } = state.model.value;
  return (
    <header class="selvage">
      <div class="qname">
        <Field
          class="nameinput"
          aria-label={words.fabricName}
          value={name}
          readOnly={state.forClass.value}
          size={Math.max(8, name.length)}
          onChange={({ currentTarget }) =>
            edit((text) => setName(text, currentTarget.value.trim() || name), currentTarget.value)
          }
        />
        {/* Its line is kept free from the first, so that nothing moves down under the hand. */}
        <span class="qsize">{top === null ? "\u00a0" : sizeSaid(top.across * UNIT, top.down * UNIT)}</span>
      </div>
      <nav class="work" aria-label={words.workLabel}>
        <ol>
          {regionsThere().map((one) => (
            <li key={one}>
              <button
                type="button"
                aria-current={one === region ? "page" : undefined}
                onClick={() => (state.region.value = one)}
              >
                {words.regions[one]}
              </button>
            </li>
          ))}
        </ol>
      </nav>
      {state.forClass.value ? null : <Dots />}
      <div class="kept">
        <span class="k">{state.photosLost.value ? words.cloth.photoNotKept : state.keptAt.value}</span>
        <button type="button" class="act" disabled={!canUndo()} onClick={undo}>
          {words.undo}
        </button>
        <button type="button" class="act" disabled={!canRedo()} onClick={redo}>
          {words.redo}
        </button>
      </div>
    </header>
  );
}

/** The lower selvage: what leads away from the quilt, and its text. */
export function LowerSelvage() {
  const first = state.region.value === "first";
  return (
    <footer class="lower">
      {first || state.forClass.value ? null : (
        <>
          <button type="button" class="act" onClick={() => (state.region.value = "first")}>
            {words.home}
          </button>
          <button type="button" class="act" onClick={() => void openFromDisk()}>
            {words.open}
          </button>
          <button type="button" class="act" onClick={() => void save(false)}>
            {words.save}
          </button>
          <button type="button" class="act" onClick={() => void save(true)}>
            {words.saveAs}
          </button>
          <button
            type="button"
            class="act"
            aria-pressed={state.textOpen.value}
            onClick={() => (state.textOpen.value = !state.textOpen.value)}
          >
            {state.textOpen.value ? words.putTextAway : words.showText}
          </button>
          <details class="notes keys">
            <summary>{words.keysTitle}</summary>
            <ul>
              {words.keys.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </details>
          <button
            type="button"
            class="act"
            aria-pressed={state.grey.value}
            onClick={() => (state.grey.value = !state.grey.value)}
          >
            {words.inGrey}
          </button>
        </>
      )}
    </footer>
  );
}
