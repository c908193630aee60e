import { strToU8, zipSync } from "fflate";
import { useEffect, useRef, useState } from "preact/hooks";
import { fabricKey, WORK_NAME } from "../../planning.ts";
import { addressOf } from "../address.ts";
import { saveOther } from "../files.ts";
import { type Given, pageWith } from "../page-copy.ts";
import { writtenPhotos } from "../photos.ts";
import { words } from "../words/index.ts";
import { Group } from "./group.tsx";
import { useShown, Waiting } from "./later-regions.tsx";
import { PatternHand } from "./pattern-hand.tsx";
import { writtenTiles } from "./photo-fills.tsx";
import { fileNameOf } from "./selvage.tsx";
import * as state from "./state.ts";
import { Label } from "./steps.tsx";

/** The book to look at: the page lets no script run but its own. */
const withoutScripts = (html: string): string => html.replace(/<script[\s\S]*?<\/script>/g, "");

/** A book with the photos of its fabrics in it; its policy lets them be shown. */
const withTiles = (html: string, tiles: string): string =>
  html.replace("style-src", "img-src data:; style-src").replace("</body>", () => `${tiles}</body>`);

const asHtml = (text: string): Blob => new Blob([text], { type: "text/html" });

/** The quilt in an address: put there, and on the clipboard where the browser lets a page. */
async function putInAddress(): Promise<void> {
  const address = addressOf(state.text.value);
  if (address === null) {
    state.said.value = words.addressTooLong;
    return;
  }
  history.replaceState(null, "", `#${address}`);
  try {
    await navigator.clipboard.writeText(location.href);
    state.said.value = words.addressCopied;
  } catch {
    state.said.value = words.addressThere;
  }
}

/** Pictures of the fabrics the quilt has, as letters. */
async function pictures(): Promise<Pick<Given, "photos">> {
  const keys = state.model.value.fabrics.map(({ name }) => fabricKey(name));
  const photos = await writtenPhotos(state.photos.value, keys);
  return Object.keys(photos).length === 0 ? {} : { photos };
}

/** One file for the class: this page with the quilt in it, to be cut and sewn and not to be changed. */
async function saveForClass(base: string): Promise<void> {
  const copy = pageWith(document, { text: state.text.value, class: true, ...(await pictures()) });
  await saveOther(asHtml(copy), `${base}-class.html`, words.classSaved);
}

/** One file with all of it, to go on with elsewhere. */
async function saveCopy(base: string): Promise<void> {
  const work = state.work.value;
  const said = work === "" ? {} : { work };
  const copy = pageWith(document, { text: state.text.value, ...said, ...(await pictures()) });
  await saveOther(asHtml(copy), `${base}-page.html`);
}

/** The photos of its fabrics as the book has them; empty until they are written, and where there are none. */
function useTiles(): string {
  const [tiles, setTiles] = useState("");
  const { photos, model } = state;
  useEffect(() => {
    let gone = false;
    void writtenTiles().then((written) => {
      if (!gone) setTiles(written);
    });
    return () => {
      gone = true;
    };
  }, [photos.value, model.value]);
  return tiles;
}

/** The book of the quilt as it prints, and what is handed on of it. */
export function PatternRegion() {
  const fresh = useShown("book");
  // While it is drawn anew, what was there stays, so that nothing moves under a hand that types.
  const last = useRef(fresh);
  if (fresh !== null) last.current = fresh;
  const shown = last.current;
  const [see, setSee] = useState<"pattern" | "book">("pattern");
  const tiles = useTiles();
  const drawn =
    shown?.looks[see === "book" ? "book.html" : "pattern.html"] ?? shown?.looks["book.html"] ?? "";
  const html = tiles === "" ? drawn : withTiles(drawn, tiles);
  const hasPattern = shown?.files["pattern.html"] !== undefined;
  const frame = useRef<HTMLIFrameElement>(null);
  const [paper, setPaper] = useState<"a4" | "letter">(
    ["in", "yd"].includes(state.model.value.unit) ? "letter" : "a4",
  );
  const [room, setRoom] = useState(() => window.innerWidth - 90);
  useEffect(() => {
    const measure = () => setRoom(frame.current?.clientWidth ?? window.innerWidth - 90);
    measure();
    window.addEventListener("resize", measure);
    return () => window.removeEventListener("resize", measure);
  }, [shown === null]);
  const base = fileNameOf(state.model.value.name).replace(/\.yaml$/, "");
  const zip = (files: Readonly<Record<string, string>>) => {
    const work = state.work.value;
    const all = {
      [`${base}.yaml`]: state.text.value,
      ...files,
      ...(work === "" ? {} : { [WORK_NAME]: work }),
    };
    const packed = zipSync(
      Object.fromEntries(Object.entries(all).map(([name, text]) => [name, strToU8(text)])),
    );
    void saveOther(new Blob([packed as Uint8Array<ArrayBuffer>], { type: "application/zip" }), `${base}.zip`);
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
              {state.forClass.value ? null : (
                <Label onClick={() => void saveForClass(base)}>{words.oneForClass}</Label>
              )}
              <Label onClick={() => zip(shown.files)}>{words.saveZip}</Label>
            </div>
            <div class="row">
              <Label
                onClick={() =>
                  void saveOther(
                    asHtml(html),
                    see === "book" || !hasPattern ? `${base}.html` : `${base}-pattern.html`,
                  )
                }
              >
                {see === "book" || !hasPattern ? words.saveBook : words.pattern.savePattern}
              </Label>
              {state.forClass.value ? null : (
                <>
                  <Label onClick={() => void saveCopy(base)}>{words.pageCopy}</Label>
                  <Label onClick={() => void putInAddress()}>{words.inAddress}</Label>
                </>
              )}
            </div>
            <p class="said">{state.said.value}</p>
            {shown.problem === "" ? null : <p class="alarm">{words.pattern.wrongSizes(shown.problem)}</p>}
            {hasPattern ? (
              <Group name="choice" label={words.pattern.handOut}>
                {(["pattern", "book"] as const).map((one) => (
                  <button
                    key={one}
                    type="button"
                    class="pickword"
                    aria-pressed={see === one}
                    onClick={() => setSee(one)}
                  >
                    {words.pattern.papersToSee[one]}
                  </button>
                ))}
              </Group>
            ) : null}
            {hasPattern && see === "pattern" && !state.forClass.value ? <PatternHand /> : null}
            <div class="choice" role="group" aria-label={words.paperLabel}>
              {(["a4", "letter"] as const).map((one) => (
                <button
                  key={one}
                  type="button"
                  class="pickword"
                  aria-pressed={paper === one}
                  onClick={() => setPaper(one)}
                >
                  {words.papers[one]}
                </button>
              ))}
            </div>
            <iframe
              ref={frame}
              class={`bookframe ${paper}`}
              title={see === "book" ? words.bookTitle : words.patternTitle}
              srcdoc={onPaper(withoutScripts(html), paper, room)}
            />
          </>
        )}
      </section>
    </div>
  );
}

/** Points of paper across, and of what is printed on it. */
const PAPER = { a4: 595.28, letter: 612 } as const;
/** Narrower than this, pages could not be read: there it is laid out for the screen. */
const PAGES_FROM = 700;

/**
 * The book for paper of one size: the printer is told, where it would take what it is set to. Where there is room it is
 * seen as it prints, page under page, since breaks stand only where the pages were worked out to end.
 */
function onPaper(html: string, paper: "a4" | "letter", room: number): string {
  const across = PAPER[paper];
  const zoom = Math.min(1, room / (across * (96 / 72)));
  const sheets =
    room < PAGES_FROM
      ? ""
      : `@media screen {
  html { zoom: ${zoom.toFixed(3)}; background: #8b958f; }
  body { background: #fff !important; color: #1d2733; width: ${across}pt; margin: 0 auto !important; padding: 30pt 0; min-height: 0; }
  section.fresh, .part-of.fresh { position: relative; padding-top: 72pt !important; }
  section.fresh::before, .part-of.fresh::before, .cover::after { content: ""; position: absolute; left: -200pt; right: -200pt; height: 18pt; margin-top: -42pt; background: #8b958f; }
  .cover::after { bottom: -48pt; }
  .cover { position: relative; }
}`;
  const rule = `<style>@page { size: ${paper === "a4" ? "A4" : "letter"} portrait; } ${sheets}</style>`;
  // Paper is white in the dark too.
  const seen =
    sheets === ""
      ? html
      : html
          .replaceAll("@media print {", "@media print, screen {")
          .replaceAll("(prefers-color-scheme: dark)", "(max-width: 0)");
  return seen.replace("</head>", () => `${rule}</head>`);
}
