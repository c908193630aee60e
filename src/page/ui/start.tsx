import { render } from "preact";
import { type Diagnostic, mendingOf, wordDiagnostic } from "../../planning.ts";
import { quiltIn } from "../address.ts";
import { pictureIn, readDropped } from "../files.ts";
import { givenIn } from "../page-copy.ts";
import { readPhotos } from "../photos.ts";
import type { Answer } from "../planner/messages.ts";
import { MOST_KEPT } from "../planner/worker.ts";
import { openSession, type WorkerPort } from "../session.ts";
import { hearOthers, keptByAnother, onConflict } from "../store.ts";
import { language, speakFor, tongue, words } from "../words/index.ts";
import {
  askMat,
  choosingAsked,
  coverAsked,
  draftInHand,
  isCurrent,
  isMat,
  keptElsewhere,
  kitsAsked,
  laidMat,
  redo,
  savingsAsked,
  undo,
  useSession,
} from "./actions.ts";
import { CutRegion } from "./cut/cut-region.tsx";
import { BlockSheet } from "./draw/block-sheet.tsx";
import { QuiltSheet } from "./draw/quilt-sheet.tsx";
import { changesSaid } from "./fabric/amount-lines.ts";
import { takeDrawer } from "./fabric/drawer-hand.ts";
import { FabricRegion } from "./fabric/fabric-region.tsx";
import { PhotoDefs } from "./fabric/photo-fills.tsx";
import { dropped } from "./fabric/photo-hand.ts";
import { Faults } from "./faults.tsx";
import { FirstOpen } from "./first-open.tsx";
import { Notices, Refused } from "./notices.tsx";
import { lookOnDisk, take, takeForClass, takeText } from "./opening.ts";
import { PatternRegion } from "./pattern/pattern-region.tsx";
import { Pile, ShortPile } from "./pile.tsx";
import { followHand, SaidHere } from "./said-here.tsx";
import { LowerSelvage, regionsThere, Selvage, save, takeFabric } from "./selvage.tsx";
import { SewRegion } from "./sew/sew-region.tsx";
import * as state from "./state.ts";
import { TextPanel } from "./text-panel.tsx";
import { Tour } from "./tour.tsx";

const told = (diagnostics: readonly Diagnostic[]): state.Fault[] =>
  diagnostics.map((each) => ({ ...wordDiagnostic(each, tongue), mend: mendingOf(each) }));

/** What the boot script leaves behind: the program's own address, for workers, and the solver, packed. */
interface Packed {
  url: string;
  solver(): Promise<ArrayBuffer>;
}

type AnswerOf<K extends Answer["kind"]> = Extract<Answer, { kind: K }>;

/** What savings were found, and how far the trying is. */
function heardOfSavings(answer: AnswerOf<"trying" | "saves" | "triedAll">): void {
  const savings = state.savings.value;
  if (savings === null || answer.id !== savingsAsked()) return;
  if (answer.kind === "trying") state.savings.value = { ...savings, done: answer.done, of: answer.of };
  else if (answer.kind === "saves")
    state.savings.value = { ...savings, found: [...savings.found, answer.saving] };
  else state.savings.value = { ...savings, finished: true };
}

function heardOfChoosing(answer: AnswerOf<"choosing" | "chosen">): void {
  const choosing = state.choosing.value;
  if (choosing === null || answer.id !== choosingAsked()) return;
  state.choosing.value =
    answer.kind === "chosen"
      ? { ...choosing, chosen: answer.chosen }
      : { ...choosing, done: answer.done, of: answer.of };
}

/** What a worker has to say; answers to older questions are let go. */
function heard(answer: Answer): void {
  switch (answer.kind) {
    case "tried":
      state.suggestions.value = state.suggestions.value.map((one) =>
        one.key === answer.key ? { ...one, amounts: answer.amounts, done: true } : one,
      );
      return;
    case "trying":
    case "saves":
    case "triedAll":
      heardOfSavings(answer);
      return;
    case "choosing":
    case "chosen":
      heardOfChoosing(answer);
      return;
    case "covered":
      if (answer.id === coverAsked())
        state.cover.value = { asked: true, covered: answer.covered, failed: answer.covered === null };
      return;
    case "kits":
      if (answer.id === kitsAsked()) state.kits.value = { asked: true, made: answer.made };
      return;
    case "shown":
      state.shown.value = answer.shown;
      return;
    case "mat":
      if (isMat(answer.id)) laidMat(answer.mat);
      return;
    default:
      heardOfPlan(answer);
  }
}

/** How far the plan of the text on the table is. */
function heardOfPlan(answer: Answer): void {
  if (!("id" in answer) || !isCurrent(answer.id)) return;
  switch (answer.kind) {
    case "laid": {
      const top = answer.picture ?? state.laid.value.top;
      state.laid.value = { top, stale: answer.picture === null, empty: answer.empty };
      state.faults.value = told(answer.diagnostics);
      return;
    }
    case "amounts":
      state.amounts.value = answer.amounts;
      state.progress.value = "so-far";
      return;
    case "planned":
      state.amounts.value = answer.amounts;
      state.progress.value = "done";
      state.faults.value = told(answer.diagnostics);
      state.planned.value = answer.whole;
      if (state.region.value === "cut") askMat();
      sayChanges();
      return;
    case "failed":
      state.faults.value = told(answer.diagnostics);
      state.progress.value = "failed";
      return;
    case "broken":
      // The fault is ours: what was known stays, and says so.
      state.broken.value = answer.message || "broken";
      state.progress.value = "before";
      return;
  }
}

const spoken = () => document.getElementById("spoken");
let speaking = 0;

/** Amounts are told once the hand rests, only those that changed. */
function sayChanges(): void {
  window.clearTimeout(speaking);
  speaking = window.setTimeout(() => {
    const place = spoken();
    if (place !== null) place.textContent = `${state.said.value} ${changesSaid()}`.trim();
  }, 900);
}

function startWorkers(packed: Packed): void {
  const compiled = packed.solver().then((bytes) => WebAssembly.compile(bytes));
  const start = (hear: (answer: Answer) => void, died: () => void): WorkerPort => {
    const worker = new Worker(packed.url);
    worker.onmessage = ({ data }: MessageEvent<Answer>) => hear(data);
    worker.onerror = () => died();
    // Until the solver has come, what is asked waits; the order stays.
    let sent = Promise.resolve();
    return {
      post(ask) {
        sent = sent.then(async () => {
          worker.postMessage(ask.kind === "start" ? { ...ask, solver: await compiled } : ask);
        });
      },
      end: () => worker.terminate(),
    };
  };
  useSession(
    openSession({
      start,
      later(milliseconds, call) {
        const timer = window.setTimeout(call, milliseconds);
        return () => window.clearTimeout(timer);
      },
      heard,
      most: MOST_KEPT,
    }),
  );
}

function Region() {
  switch (state.region.value) {
    case "first":
      return <FirstOpen />;
    case "draw":
      if (state.model.value.kind !== "quilt")
        return (
          <div class="spread">
            <p class="said">{state.said.value}</p>
            <Faults />
            <Pile />
          </div>
        );
      return state.sheet.value === "quilt" ? <QuiltSheet /> : <BlockSheet />;
    case "fabric":
      return <FabricRegion />;
    case "cut":
      return <CutRegion />;
    case "sew":
      return <SewRegion />;
    case "pattern":
      return <PatternRegion />;
  }
}

function Page() {
  if (state.region.value === "first")
    return (
      <div class="frame">
        <header class="selvage bare">
          <div class="qname">{words.program}</div>
        </header>
        <Refused />
        <FirstOpen />
        <LowerSelvage />
      </div>
    );
  return (
    <div class={state.grey.value ? "frame grey" : "frame"}>
      <a class="skip" href="#work">
        {words.skip}
      </a>
      <Selvage />
      <Notices />
      <Refused />
      <Tour />
      <main id="work" class={state.textOpen.value ? "withtext" : ""} tabIndex={-1}>
        <h1 class="heard">{state.model.value.name || words.theQuilt}</h1>
        <Region />
        {state.textOpen.value ? <TextPanel /> : null}
      </main>
      <LowerSelvage />
      <ShortPile />
      <PhotoDefs />
    </div>
  );
}

/** All of it anew where the language changes: little of what stands there would know of it by itself. */
function Spoken() {
  return <Page key={state.spoken.value} />;
}

/** The page in the language of the text on the table, or of the browser. */
function speak(text: string): void {
  speakFor(text);
  state.spoken.value = language;
  document.documentElement.lang = language;
}

/** Where the hand comes to in a leaf: its paper where there is one, not the name above it. */
const firstIn = (leaf: HTMLElement): HTMLElement | null =>
  leaf.querySelector<HTMLElement>('.paper [tabindex="0"]') ??
  leaf.querySelector<HTMLElement>('[tabindex="0"], button:not([tabindex="-1"], :disabled), input, a');

/** The next leaf of the page that has something to take hold of. */
function goToLeaf(by: 1 | -1): void {
  const leaves = [...document.querySelectorAll<HTMLElement>("header, .leaf, .lower")];
  const now = leaves.findIndex((leaf) => leaf.contains(document.activeElement));
  const others = leaves.map((_, i) => leaves[(now + by * (i + 1) + 2 * leaves.length) % leaves.length]);
  for (const leaf of others) {
    const first = leaf === undefined ? null : firstIn(leaf);
    if (first === null) continue;
    first.focus();
    return;
  }
}

/** Regions one after another by F6; the words of work by alt and a figure; undo and redo; a fabric by its number. */
function keys(event: KeyboardEvent): void {
  const typing =
    event.target instanceof HTMLElement &&
    (event.target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(event.target.tagName));
  const command = event.ctrlKey || event.metaKey;
  if (command && !typing && event.key.toLowerCase() === "z") {
    if (event.shiftKey) redo();
    else undo();
  } else if (command && !typing && event.key.toLowerCase() === "y") redo();
  else if (command && event.key.toLowerCase() === "s" && !state.forClass.value) void save(event.shiftKey);
  else if (event.altKey && /^[1-5]$/.test(event.key) && state.text.value !== "") {
    const region = state.REGIONS[Number(event.key) - 1]!;
    if (regionsThere().includes(region)) state.region.value = region;
  } else if (event.key === "F6") {
    goToLeaf(event.shiftKey ? -1 : 1);
  } else if (
    !typing &&
    !command &&
    !event.altKey &&
    state.region.value !== "first" &&
    /^[1-9]$/.test(event.key)
  )
    takeFabric(Number(event.key) - 1);
  else return;
  event.preventDefault();
}

/** The quilt that the page was handed out with, or that its address holds. */
function takeGiven(): void {
  const given = givenIn(document);
  const photos = given?.photos === undefined ? null : readPhotos(given.photos);
  if (given?.class === true) {
    void takeForClass(given.text, photos);
    return;
  }
  const sent = quiltIn(location.hash);
  if (sent !== null && "text" in sent) {
    takeText(sent.text, null);
    state.said.value = words.fromAddress;
  } else if (given !== null) takeText(given.text, null, given.work, photos);
  if (sent !== null && "problem" in sent) state.said.value = words.addressProblem[sent.problem];
}

/** Draws the page and starts what plans for it. */
export function startPage(): void {
  startWorkers((globalThis as unknown as { crossgrain: Packed }).crossgrain);
  const spokenPlace = document.createElement("div");
  spokenPlace.id = "spoken";
  spokenPlace.className = "heard";
  spokenPlace.setAttribute("aria-live", "polite");
  spokenPlace.setAttribute("role", "status");
  document.body.append(spokenPlace);
  document.addEventListener("keydown", keys);
  hearOthers(
    (key) => key === draftInHand() && state.region.value !== "first",
    () => {
      state.elsewhere.value = words.elsewhere;
    },
  );
  onConflict(keptElsewhere);
  window.addEventListener("focus", () => {
    void lookOnDisk();
    void keptByAnother(draftInHand()).then((so) => {
      if (so && state.region.value !== "first") state.elsewhere.value = words.elsewhere;
    });
  });
  document.addEventListener("dragover", (event) => event.preventDefault());
  document.addEventListener("drop", (event) => {
    event.preventDefault();
    if (event.dataTransfer === null) return;
    const picture = pictureIn(event.dataTransfer);
    if (picture === null || !dropped(picture)) void readDropped(event.dataTransfer).then(take);
  });
  void takeDrawer();
  followHand();
  // A sheet just taken up begins with its own help, and at its top.
  state.sheet.subscribe(() => {
    state.said.value = "";
    window.scrollTo(0, 0);
  });
  state.region.subscribe(() => {
    state.said.value = "";
    window.scrollTo(0, 0);
  });
  state.said.subscribe((sentence) => {
    spokenPlace.textContent = sentence;
  });
  state.text.subscribe(speak);
  takeGiven();
  render(<Spoken />, document.getElementById("page")!);
  // What is said at the hand is placed by the window: it stands outside what the page's own width contains.
  const atHand = document.createElement("div");
  document.body.append(atHand);
  render(<SaidHere />, atHand);
}
