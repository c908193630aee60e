import { computed, signal } from "@preact/signals";
import { readModel } from "../../edits/model.ts";
import type { Mending, WordedDiagnostic } from "../../planning.ts";
import { NO_PHOTOS, type Photos } from "../photos.ts";
import type { Amounts } from "../planner/amounts.ts";
import type { Chosen } from "../planner/choosing.ts";
import type { KitsMade } from "../planner/kits.ts";
import type { Mat } from "../planner/mat.ts";
import type { ChooseWhat, Covered, FoundSaving, Shown } from "../planner/messages.ts";
import type { Picture } from "../planner/picture.ts";
import { NOTHING_SEWN, type Sewn } from "../sewn.ts";

/** Words of work, in the order of the work. */
export const REGIONS = ["draw", "fabric", "cut", "sew", "pattern"] as const;
export type Region = (typeof REGIONS)[number];

/** The quilt's text: everything else follows from it. */
export const text = signal("");
/** The language that is spoken. */
export const spoken = signal("en");
export const model = computed(() => readModel(text.value));

/** Pictures of the fabrics, by name. */
export const photos = signal<Photos>(NO_PHOTOS);

/** The browser had no room for them: that is said until it has, whatever else is kept meanwhile. */
export const photosLost = signal(false);

/** What was said of the work at the mat, as its file has it; empty while nothing has been said. */
export const work = signal("");
/** The diagrams to cut from; null while they are being worked out. */
export const mat = signal<Mat | null>(null);
/** Fabric on the mat, and the strip in hand on it; null for the next that is to be cut. */
export const onMat = signal("");
export const strip = signal<{ lay: number; number: number } | null>(null);
/** Bag whose pieces are looked at, by index; null for none. */
export const bagInHand = signal<number | null>(null);

/** The page is a copy for a class: its quilt is cut and sewn, and not changed. */
export const forClass = signal(false);

/** Where on the page one is; `first` before a quilt is chosen. */
export const region = signal<Region | "first">("first");
/** On the drawing table: the whole quilt, or a block by its key. */
export const sheet = signal<{ block: string } | "quilt">("quilt");
/** The text is open beside the drawing. */
export const textOpen = signal(false);

/** Pictures are seen without their colours, for light and dark. */
export const grey = signal(false);

/** Name on disk; empty for what has never been saved. */
export const fileName = signal("");
/** The last save came to nothing: a download is offered. */
export const unsaved = signal(false);
/** The file as something else has written it meanwhile; null while it is as it was here. */
export const onDisk = signal<{ name: string; text: string; stamp: number } | null>(null);
/** What another window does with this quilt; empty while none has it. */
export const elsewhere = signal("");
/** When it was last kept in this browser; empty before. */
export const keptAt = signal("");

/** The top as last laid out. `stale`: the text has a fault and this is from before it. */
export const laid = signal<{ top: Picture | null; stale: boolean; empty: number }>({
  top: null,
  stale: false,
  empty: 0,
});
/** What is wrong or worth knowing, in words; `mend`: a word of the file that one tap puts another for. */
export interface Fault extends WordedDiagnostic {
  mend: Mending | null;
}

export const faults = signal<readonly Fault[]>([]);

/** How far the amounts are: from before, searched quickly, searched to the end, or impossible just now. */
export type Progress = "before" | "so-far" | "done" | "failed";
export const progress = signal<Progress>("before");
export const amounts = signal<Amounts | null>(null);
/** Amounts as they were before the last edit: what a change is told against. */
export const amountsBefore = signal<Amounts | null>(null);
/** There is a plan of the text as it stands, and nothing of it is empty. */
export const planned = signal(false);
export const broken = signal("");

/** How far the sewing is. */
export const sewn = signal<Sewn>(NOTHING_SEWN);

/** Drawings made by the worker for the region in sight. */
export const shown = signal<Shown | null>(null);

/** What lies in the hand: two fabrics, and a unit, the brush, or nothing that takes off. */
export type Tool = "lay" | "colour" | "off";
export const tool = signal<Tool>("lay");
export const firstFabric = signal(0);
export const secondFabric = signal(1);
export const unitInHand = signal("square");
export const turnInHand = signal(0);
export const reach = signal<"patch" | "alike">("patch");

/** The place in hand on the paper, and the far corner of an area being chosen. */
export const square = signal({ column: 0, row: 0 });
export const areaFrom = signal<{ column: number; row: number } | null>(null);
/** The next tap ends an area instead of laying one square. */
export const spanning = signal(false);

/** The placed block in hand in the quilt; null when none is. */
export const placed = signal<{ row: number; column: number } | null>(null);
export const swapping = signal(false);
export const borderInHand = signal<number | null>(null);
/** Fabric whose amounts are opened up. */
export const opened = signal<string | null>(null);

/** The sentence under the drawing; screen readers hear it. */
export const said = signal("");

/** Other ways, each really planned; null while none have been asked for. */
export interface Suggestion {
  key: string;
  label: string;
  text: string;
  amounts: Amounts | null;
  done: boolean;
}
export const suggestions = signal<readonly Suggestion[]>([]);

/** Changes that buy less, as they are found; null while none have been looked for. */
export interface Savings {
  done: number;
  /** How many changes there are to plan; 0 before that is known. */
  of: number;
  finished: boolean;
  found: readonly FoundSaving[];
}
export const savings = signal<Savings | null>(null);

/** Ways of making or turnings beside one another; null while none have been asked for. */
export interface Choosing {
  what: ChooseWhat;
  done: number;
  of: number;
  chosen: Chosen | null;
}
export const choosing = signal<Choosing | null>(null);

/** Kind of unit whose other ways were asked for where it is sewn; empty for none. */
export const waysOf = signal("");

/** The papers of the class: null while nobody has asked, or they are on their way. */
export const kits = signal<{ asked: boolean; made: KitsMade | null }>({ asked: false, made: null });

/** The table of fabric there is, as its file has it, with the file's name; empty before there is one. */
export const drawer = signal({ name: "", text: "" });
/** The same before the last change to it; null where there is nothing to go back to. */
export const drawerBefore = signal<{ name: string; text: string } | null>(null);
/** What the drawer covers of the quilt: null while nobody has asked, or the plan is on its way. */
export const cover = signal<{ asked: boolean; covered: Covered | null; failed: boolean }>({
  asked: false,
  covered: null,
  failed: false,
});
