import {
  beforeEntry,
  type Change,
  clothsOf,
  type Diagnostic,
  drawFabric,
  type FabricPlan,
  FROM_BAGS,
  fingerprint,
  formatLength,
  goneOnList,
  goOn,
  instructionsFor,
  openFrom,
  type Plan,
  pieceFacts,
  type planSpec,
  readSpecFile,
  readWorkFile,
  type SpokenCloth,
  toldStrips,
  typeset,
  USUALLY_PLANNED,
  WORK_NAME,
} from "../../planning.ts";
import { language, tongue } from "../words/index.ts";
import { placesOf } from "./bag-places.ts";
import { type MatLay, matLay } from "./mat-parts.ts";

type Solve = Parameters<typeof planSpec>[2];

/** A bag of the fabric that is cut. */
interface MatBag {
  letter: string;
  count: number;
  /** How many lay in it when the diagram was made. */
  lay: number;
  size: string;
  uses: string[];
  /** Where its pieces lie in the quilt, as a path in millimetres. */
  place: string;
}

/** What was told of a strip: it is cut, or off the cloth since later ones are. */
interface ToldStrip {
  lay: number;
  number: number;
  cut: boolean;
}

/** What to do with a strip, in the words of the cutting steps. */
interface StripWords {
  lay: number;
  number: number;
  title: string;
  gives: string[];
  /** What a blade or a print asks for. */
  mind: string[];
}

/** A fabric at the mat: its diagram, what is ticked on it, and its bags. */
export interface MatFabric {
  name: string;
  colour: string;
  /** Mark of the diagram that the numbers are of, and of the plan of what ticked strips leave. */
  mark: string;
  restMark: string;
  lays: MatLay[];
  /** How its cloths are spoken of. */
  cloths: SpokenCloth[];
  words: StripWords[];
  bags: MatBag[];
  told: ToldStrip[];
  /** What is cut further out of its bag. */
  further: string[];
  /** Usable width that it is planned with, and the narrowest that it works with; empty where nothing says. */
  width: string;
  narrowest: string;
  /** To buy for what is left; empty where what is there is enough. */
  buy: string;
  /** How the drawing is printed. */
  svg: string;
}

/** The mat as the work stands. */
export interface Mat {
  /** Text of the work that it is of. */
  work: string;
  /** The same without what is ticked on these diagrams. */
  base: string;
  /** Fabrics of which strips are ticked, in the order in which that was said. */
  ticked: string[];
  fabrics: MatFabric[];
  /** What the last thing said has changed, in lines. */
  changed: string[];
  /** Why what was said does not fit the quilt as it is now; then the diagrams are those of the quilt. */
  problems: Diagnostic[];
}

/** What one strip gives, by the steps as they are printed. */
function wordsOf(plan: Plan, fabric: FabricPlan): StripWords[] {
  return fabric.steps.flatMap((step) =>
    step.strips.map((number): StripWords => {
      const subcuts = step.subcuts.map((each) => ({ ...each, count: each.perStrip }));
      const alone = { ...fabric, steps: [{ ...step, count: 1, strips: [number], subcuts }] };
      const told = instructionsFor(plan, alone, tongue).filter(
        ({ lay, phrases, parts }) => lay !== FROM_BAGS && (parts.length > 0 || phrases.length > 0),
      );
      const own =
        told.find(({ parts }) => parts.length > 0) ??
        told.find(({ strips }) => strips.includes(number)) ??
        told[0];
      const [title = "", ...gives] =
        own === undefined
          ? []
          : own.parts.length > 0
            ? own.parts.flatMap(({ phrases }) => phrases)
            : own.phrases;
      const flags = own?.flags.map((flag) => tongue.cutting.stepFlags[flag]) ?? [];
      return {
        lay: step.lay,
        number,
        title: typeset(title),
        gives: gives.map(typeset),
        mind: [...flags, ...(own?.notes ?? [])].map(typeset),
      };
    }),
  );
}

function matFabric(plan: Plan, index: number, rest: Plan, told: MatFabric["told"]): MatFabric {
  const fabric = plan.fabrics[index]!;
  const after = rest.fabrics.find(({ name }) => name === fabric.name) ?? fabric;
  const places = placesOf(plan, fabric);
  const facts = pieceFacts(fabric, plan, tongue);
  const { purchase, stock = [], sturdiness, done } = fabric;
  const bought = stock.filter(({ from, used }) => from === "shop" && used > 0);
  const say = (ticks: number) => formatLength(ticks, plan.ruler, { typeset: true });
  return {
    name: fabric.name,
    colour: fabric.colour,
    mark: fingerprint(fabric),
    restMark: fingerprint(after),
    lays: fabric.lays.map((lay, i) => matLay(lay, i, fabric, plan)),
    cloths: clothsOf(fabric),
    words: wordsOf(plan, fabric),
    bags: facts.map(({ letter, count, size, uses }, i) => ({
      letter,
      count,
      size: typeset(size),
      uses: uses.map(typeset),
      lay: done?.cut[i] ?? 0,
      place: places[i] ?? "",
    })),
    told,
    further: instructionsFor(plan, fabric, tongue).flatMap(({ lay, phrases }) =>
      lay === FROM_BAGS ? phrases.map(typeset) : [],
    ),
    width: say(fabric.usable),
    narrowest: sturdiness.narrowestUsable === null ? "" : say(sturdiness.narrowestUsable),
    buy: [
      ...(purchase === null ? [] : [purchase.text]),
      ...bought.map(({ name, used }) => `${used} ${name}`),
    ].join(", "),
    svg: drawFabric(plan, index, tongue),
  };
}

/** Whether anything of a fabric is other than it was planned. */
function hasChanged({ cut, lost, served, taken, width, wider, letters, more }: Change): boolean {
  const told = [cut, lost, served, taken, letters.more, letters.gone].some(({ length }) => length > 0);
  return told || width !== null || wider !== null || more !== null;
}

/** What the last entry of the work changed: its own fabric first, and what followed from it in others. */
function lastChanges(changes: readonly Change[], fabric: string): Change[] {
  const own = changes.findLastIndex((change) => change.fabric === fabric);
  return own < 0 ? [] : changes.slice(own).filter((change, i) => i === 0 || hasChanged(change));
}

/** What there is to go on from: a quilt's text with the plan of it, and what was said of the work. */
export interface AtTheMat {
  quilt: { text: string; name: string };
  /** Empty while nothing has been said. */
  work: string;
  plan: Plan;
}

const errorsOf = (all: readonly Diagnostic[]): Diagnostic[] =>
  all.filter(({ severity }) => severity === "error");

interface Gone {
  plan: Plan;
  changes: Change[];
  problems: Diagnostic[];
}

/**
 * The diagrams that a maker cuts from, with what she has ticked on them, and the plan of what is left then. Planned by the
 * very code of the command line, so that ticks and words come to the same.
 */
export async function matOf(
  { quilt, work, plan }: AtTheMat,
  solve: Solve,
): Promise<{ mat: Mat; rest: Plan }> {
  const nothing: Gone = { plan, changes: [], problems: [] };
  const from = async (text: string): Promise<Gone> => {
    const request = {
      quilt: { ...quilt, language },
      work: { text, name: WORK_NAME },
      words: [],
      again: false,
      made: null,
    };
    const gone = await goOn(request, solve);
    return gone.value === null
      ? { ...nothing, problems: errorsOf(gone.diagnostics) }
      : { ...gone.value, problems: [] };
  };
  const unit = readSpecFile(quilt.text, quilt.name).value?.defaultUnit ?? "in";
  const read = work === "" ? null : readWorkFile(work, WORK_NAME, unit);
  if (read !== null && read.value === null)
    return asMat(nothing, { ...nothing, problems: read.diagnostics }, work, work, []);
  const said = read?.value?.said ?? [];
  const open = openFrom(said);
  const base = open === said.length ? work : beforeEntry(work, open);
  const usual = JSON.stringify(read?.value?.planned ?? USUALLY_PLANNED) === JSON.stringify(USUALLY_PLANNED);
  const begun = open === 0 && usual ? nothing : await from(base);
  if (begun.problems.length > 0) return asMat(nothing, begun, work, work, []);
  const rest = open === said.length ? begun : await from(work);
  if (rest.problems.length > 0) return asMat(begun, { ...begun, problems: rest.problems }, work, base, []);
  const last = said[open - 1]?.fabric ?? "";
  return asMat({ ...begun, changes: lastChanges(begun.changes, last) }, rest, work, base, said.slice(open));
}

type Entries = NonNullable<ReturnType<typeof readWorkFile>["value"]>["said"];

function asMat(begun: Gone, rest: Gone, work: string, base: string, open: Entries): { mat: Mat; rest: Plan } {
  const { plan, changes } = begun;
  const fabrics = plan.fabrics.map((fabric, index): MatFabric => {
    const entry = open.find((one) => one.fabric === fabric.name);
    const told = entry === undefined ? [] : toldStrips(fabric, entry);
    return matFabric(
      plan,
      index,
      rest.plan,
      told.map(({ lay, number, state }) => ({ lay, number, cut: state === "cut" })),
    );
  });
  const changed =
    changes.length === 0 ? [] : goneOnList(plan, changes, tongue).trimEnd().split("\n").slice(2).map(typeset);
  const ticked = open.map(({ fabric }) => fabric);
  const mat = {
    work,
    base,
    ticked,
    fabrics,
    changed,
    problems: rest.problems,
  };
  return { mat, rest: rest.plan };
}
