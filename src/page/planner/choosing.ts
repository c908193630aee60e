import { setMethod } from "../../edits/fabric-edits.ts";
import { withGrid } from "../../edits/motif-edits.ts";
import { withRows } from "../../edits/quilt-edits.ts";
import {
  arrangeBlocks,
  compareMethods,
  type planSpec,
  readSpecFile,
  typeset,
  USUAL_MINUTES,
  USUAL_OPTIONS,
} from "../../planning.ts";
import { language, tongue } from "../words/index.ts";
import { type Picture, pictureOf } from "./picture.ts";

type Solve = Parameters<typeof planSpec>[2];
type Comparison = NonNullable<Awaited<ReturnType<typeof compareMethods>>["value"]>;
type Figures = Comparison["filed"];
type Told = (done: number, of: number) => void;

/** One way, with the text that has it and what is bought otherwise than now. */
export interface ChosenWay {
  name: string;
  /** It is what the file has. */
  now: boolean;
  text: string;
  /** Fabrics of which another amount is bought, `night 7/8 yd`; of the way there is, those that differ in another. */
  buys: string[];
  cuts: number;
  seams: number;
  bias: number;
  minutes: number;
  /** Why it cannot be; empty where it can. */
  why: string;
}

export type Chosen =
  | {
      what: "ways";
      units: { unit: string; count: number; ways: ChosenWay[] }[];
      best: (ChosenWay & { proven: boolean }) | null;
    }
  | {
      what: "turnings";
      turnings: {
        name: string;
        now: boolean;
        text: string;
        picture: Picture | null;
        buys: string[];
        nested: number;
        places: number;
        why: string;
      }[];
    };

interface Buys {
  fabric: string;
  buy: string;
}

/** A fabric with what is bought of it; the figure stays with its measure. */
const buysOf = ({ fabric, buy }: Buys): string =>
  `${fabric} ${buy === "" ? "–" : typeset(buy).replaceAll(" ", "\u00a0")}`;

const unlike = (fabrics: readonly Buys[], now: readonly Buys[]): string[] =>
  fabrics.filter(({ fabric, buy }) => now.find((one) => one.fabric === fabric)?.buy !== buy).map(buysOf);

/** What is bought now of the fabrics that another way buys otherwise; of all, where none does. */
function boughtNow(now: readonly Buys[], others: readonly (readonly Buys[])[]): string[] {
  const differ = now.filter(({ fabric, buy }) =>
    others.some((other) => other.find((one) => one.fabric === fabric)?.buy !== buy),
  );
  return (differ.length === 0 ? now : differ).map(buysOf);
}

function figuresOf({ fabrics, strips, subcuts, seams, biasEdges, minutes }: Figures, now: Figures) {
  return {
    buys: unlike(fabrics, now.fabrics),
    cuts: strips + subcuts,
    seams,
    bias: biasEdges,
    minutes: Math.round(minutes),
  };
}

const NONE = { buys: [], cuts: 0, seams: 0, bias: 0, minutes: 0 };

/** Every way of making the units of a quilt, as `crossgrain compare` has them, each with the text that takes it. */
export async function chooseWays(text: string, solve: Solve, told: Told): Promise<Chosen> {
  const spec = readSpecFile(text, "quilt.yaml", null, language).value;
  const minutes = spec?.kind === "quilt" ? spec.minutes : USUAL_MINUTES;
  const found = spec === null ? null : await compareMethods(spec, USUAL_OPTIONS, minutes, solve, told);
  if (found?.value == null) return { what: "ways", units: [], best: null };
  const { units, rows, filed, best } = found.value;
  const madeBy = (methods: Record<string, string>): string =>
    Object.entries(methods).reduce((made, [unit, method]) => setMethod(made, unit, method), text);
  return {
    what: "ways",
    units: units.map(({ unit, count }) => ({
      unit,
      count,
      ways: rows
        .filter((row) => row.unit === unit)
        .map(({ method, filed: now, figures, why }): ChosenWay => {
          const own = figures === null ? NONE : figuresOf(figures, filed);
          const others = rows.flatMap((row) =>
            row.unit === unit && row.figures !== null ? [row.figures.fabrics] : [],
          );
          return {
            name: tongue.unitNames.method(method),
            now,
            text: madeBy({ [unit]: method }),
            ...own,
            buys: now ? boughtNow(filed.fabrics, others) : own.buys,
            why: why === null ? "" : tongue.whyNot(why),
          };
        }),
    })),
    best: {
      name: Object.entries(best.methods)
        .map(([unit, method]) => `${tongue.unitNames.unit(unit)}: ${tongue.unitNames.method(method)}`)
        .join("; "),
      now: Object.keys(best.methods).length === 0,
      text: madeBy({ ...best.methods } as Record<string, string>),
      ...figuresOf(best.figures, filed),
      why: "",
      proven: best.proven,
    },
  };
}

/** Turnings of the blocks and of their motifs, as `crossgrain arrange` has them, each with the text that takes it. */
export async function chooseTurnings(text: string, solve: Solve, told: Told): Promise<Chosen> {
  const spec = readSpecFile(text, "quilt.yaml", null, language).value;
  const wanted = { blocks: null, motifs: null };
  const asked = { seed: 1, ...wanted };
  const found = spec === null ? null : await arrangeBlocks(spec, asked, USUAL_OPTIONS, solve, told);
  if (found?.value == null) return { what: "turnings", turnings: [] };
  const all = found.value.arrangements;
  const now = all.find(({ key }) => key === "file")?.planned?.fabrics ?? [];
  return {
    what: "turnings",
    turnings: all.map(({ key, blocks, motifs, rows, grids, planned, why }) => ({
      name: tongue.arrange.turned(blocks, motifs, found.value?.seed ?? 0),
      now: key === "file",
      text: key === "file" ? text : grids.reduce(withGrid, withRows(text, rows)),
      picture: planned === null ? null : pictureOf(planned.top),
      buys:
        planned === null
          ? []
          : key === "file"
            ? boughtNow(
                now,
                all.flatMap((one) => (one.planned === null ? [] : [one.planned.fabrics])),
              )
            : unlike(planned.fabrics, now),
      nested: (planned?.nesting?.places ?? 0) - (planned?.nesting?.unNested ?? 0),
      places: planned?.nesting?.places ?? 0,
      why: why === null ? "" : tongue.whyNot(why),
    })),
  };
}
