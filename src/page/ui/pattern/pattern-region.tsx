import { signal } from "@preact/signals";
import { strToU8, zipSync } from "fflate";
import type { RefObject } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { fabricKey, WORK_NAME } from "../../../planning.ts";
import { addressOf } from "../../address.ts";
import { saveOther } from "../../files.ts";
import { type Given, pageWith } from "../../page-copy.ts";
import { writtenPhotos } from "../../photos.ts";
import { fittingPhotos } from "../../shrink-photo.ts";
import { words } from "../../words/index.ts";
import { writtenTiles } from "../fabric/photo-fills.tsx";
import { Group } from "../group.tsx";
import { useShown, Waiting } from "../later-regions.tsx";
import { fileNameOf } from "../selvage.tsx";
import * as state from "../state.ts";
import { Label } from "../steps.tsx";
import { ClassHand } from "./class-hand.tsx";
import { PatternHand } from "./pattern-hand.tsx";
import { onPaper, type Paper, savedFor, withTiles } from "./pattern-sheets.ts";

/** The book to look at: the page lets no script run but its own. */
const withoutScripts = (html: string): string => html.replace(/<script[\s\S]*?<\/script>/g, "");

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

/** Most letters of one file that is handed on. */
const MOST_LETTERS = 3_000_000;

/** This page as one file with all that is given, pictures of its fabrics too, as large as there is room for them. */
async function copyWith(given: Given): Promise<Blob> {
  const keys = state.model.value.fabrics.map(({ name }) => fabricKey(name));
  const own = Object.entries(state.photos.value).filter(([key]) => keys.includes(key));
  const bare = pageWith(document, given);
  if (own.length === 0) return asHtml(bare);
  const small = await fittingPhotos(Object.fromEntries(own), MOST_LETTERS - bare.length - 1000);
  return asHtml(pageWith(document, { ...given, photos: await writtenPhotos(small, keys) }));
}

/** One file for the class: this page with the quilt in it, to be cut and sewn and not to be changed. */
async function saveForClass(base: string): Promise<void> {
  const copy = await copyWith({ text: state.text.value, class: true });
  await saveOther(copy, `${base}-class.html`, words.classSaved);
}

/** One file with all of it, to go on with elsewhere. */
async function saveCopy(base: string): Promise<void> {
  const work = state.work.value;
  const copy = await copyWith({ text: state.text.value, ...(work === "" ? {} : { work }) });
  await saveOther(copy, `${base}-page.html`);
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

/** The paper that was chosen, for as long as the page is open; null for the one usual where lengths are written so. */
const paperChosen = signal<Paper | null>(null);

/** Papers of one quilt, in the order in which they are looked at. */
const PAPERS = ["pattern.html", "book.html"];

/** Papers of the class that are printed, once its kits are planned: the teacher's sheet first. */
function classPapers(): Record<string, string> {
  const files = Object.entries(state.kits.value.made?.files ?? {});
  return Object.fromEntries(files.filter(([name]) => /^(class|kit-\d+)\.html$/.test(name)));
}

function paperNamed(paper: string): string {
  const { pattern, book } = words.pattern.papersToSee;
  const [, kit] = /^kit-(\d+)/.exec(paper) ?? [];
  if (kit !== undefined) return words.kits.paper(Number(kit));
  return paper === "class.html" ? words.kits.sheet : paper === "book.html" ? book : pattern;
}

function saveWord(paper: string): string {
  if (paper === "book.html") return words.saveBook;
  return paper === "pattern.html" ? words.pattern.savePattern : words.kits.save(paperNamed(paper));
}

type Files = Readonly<Record<string, string>>;

/** Everything there is of the quilt in one packed file: its own text, papers, class and work. */
function zipAll(base: string, files: Files): void {
  const work = state.work.value;
  const ofClass = Object.entries(state.kits.value.made?.files ?? {});
  const all = {
    [`${base}.yaml`]: state.text.value,
    ...files,
    ...Object.fromEntries(ofClass.map(([name, text]) => [`class/${name}`, text])),
    ...(work === "" ? {} : { [WORK_NAME]: work }),
  };
  const packed = zipSync(
    Object.fromEntries(Object.entries(all).map(([name, text]) => [name, strToU8(text)])),
  );
  void saveOther(new Blob([packed as Uint8Array<ArrayBuffer>], { type: "application/zip" }), `${base}.zip`);
}

/** Printing, and what is handed on: the paper looked at, this page with the quilt, everything. */
function HandOn({ see, html, files, print }: { see: string; html: string; files: Files; print(): void }) {
  const base = fileNameOf(state.model.value.name).replace(/\.yaml$/, "");
  const own = !state.forClass.value;
  return (
    <>
      <div class="row">
        <Label strong onClick={print}>
          {words.print2}
        </Label>
        {own ? <Label onClick={() => void saveForClass(base)}>{words.oneForClass}</Label> : null}
        <Label onClick={() => zipAll(base, files)}>{words.saveZip}</Label>
      </div>
      <div class="row">
        <Label
          onClick={() =>
            void saveOther(asHtml(html), see === "book.html" ? `${base}.html` : `${base}-${see}`)
          }
        >
          {saveWord(see)}
        </Label>
        {own ? (
          <>
            <Label onClick={() => void saveCopy(base)}>{words.pageCopy}</Label>
            <Label onClick={() => void putInAddress()}>{words.inAddress}</Label>
          </>
        ) : null}
      </div>
    </>
  );
}

/** Which of the papers is looked at. */
function PaperToSee({ looks, see, take }: { looks: Files; see: string; take(paper: string): void }) {
  if (Object.keys(looks).length < 2) return null;
  return (
    <Group name="choice" label={words.pattern.handOut}>
      {PAPERS.concat(Object.keys(classPapers()))
        .filter((one) => looks[one] !== undefined)
        .map((one) => (
          <button
            key={one}
            type="button"
            class="pickword"
            aria-pressed={see === one}
            onClick={() => take(one)}
          >
            {paperNamed(one)}
          </button>
        ))}
    </Group>
  );
}

/** The sheet it is printed on. */
function SheetChoice({ now, take }: { now: Paper; take(sheet: Paper): void }) {
  return (
    <div class="choice" role="group" aria-label={words.paperLabel}>
      {(["a4", "letter"] as const).map((one) => (
        <button key={one} type="button" class="pickword" aria-pressed={now === one} onClick={() => take(one)}>
          {words.papers[one]}
        </button>
      ))}
    </div>
  );
}

/** How wide the place of the pages is, as the window is drawn larger and smaller. */
function useRoom(frame: RefObject<HTMLIFrameElement | null>, there: boolean): number {
  const [room, setRoom] = useState(() => window.innerWidth - 90);
  useEffect(() => {
    const measure = () => setRoom(frame.current?.clientWidth ?? window.innerWidth - 90);
    measure();
    window.addEventListener("resize", measure);
    return () => window.removeEventListener("resize", measure);
  }, [there]);
  return room;
}

/** The book of the quilt as it prints, and what is handed on of it. */
export function PatternRegion() {
  const fresh = useShown("book");
  // While it is drawn anew, what was there stays, so that nothing moves under a hand that types.
  const last = useRef(fresh);
  if (fresh !== null) last.current = fresh;
  const shown = last.current;
  const [wish, setSee] = useState("pattern.html");
  const tiles = useTiles();
  const frame = useRef<HTMLIFrameElement>(null);
  const sheet = paperChosen.value ?? (["in", "yd"].includes(state.model.value.unit) ? "letter" : "a4");
  const room = useRoom(frame, shown !== null);
  const looks = { ...shown?.looks, ...classPapers() };
  const see = looks[wish] === undefined ? "book.html" : wish;
  const drawn = looks[see] ?? "";
  const html = tiles === "" ? drawn : withTiles(drawn, tiles);
  const own = !state.forClass.value;
  return (
    <div class="spread book">
      <section class="leaf" aria-label={words.patternTitle}>
        <h2>{words.patternTitle}</h2>
        {shown === null ? (
          <Waiting />
        ) : (
          <>
            <HandOn
              see={see}
              html={savedFor(html, sheet)}
              files={shown.files}
              print={() => frame.current?.contentWindow?.print()}
            />
            <p class="said">{state.said.value}</p>
            {shown.problem === "" ? null : <p class="alarm">{words.pattern.wrongSizes(shown.problem)}</p>}
            {own && shown.files["pattern.html"] !== undefined ? <ClassHand /> : null}
            <PaperToSee looks={looks} see={see} take={setSee} />
            {own && see === "pattern.html" ? <PatternHand /> : null}
            <SheetChoice
              now={sheet}
              take={(paper) => {
                paperChosen.value = paper;
              }}
            />
            <iframe
              ref={frame}
              class={`bookframe ${sheet}`}
              title={see === "book.html" ? words.bookTitle : paperNamed(see)}
              srcdoc={onPaper(withoutScripts(html), sheet, room)}
            />
          </>
        )}
      </section>
    </div>
  );
}
