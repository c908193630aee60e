import { lengthText, sizeBlock } from "../edits/block-edits.ts";
import { setMethod, setPrint, setStyle } from "../edits/fabric-edits.ts";
import { type QuiltModel, readModel, rulerOf, ticksOf } from "../edits/model.ts";
import { fillTurns, setSashing, widenBorder } from "../edits/quilt-edits.ts";
import { readText, valueAt, withoutValue, withValue } from "../edits/text-edit.ts";
import { formatLength } from "../length/index.ts";
import { nth } from "../length/nth.ts";
import { findUnitKind } from "../quilt/index.ts";
import type { Change, Family, Idea } from "./types.ts";

/** Marks by which a width is narrowed, the nearest first: most of an inch by eighths. */
const NARROWER = [1, 2, 3, 4, 6, 8];

/** Steps by which blocks are made smaller, each a mark for every square. */
const SMALLER = [1, 2];

/**
 * Changes to a file that are worth planning, in families: another cutting style, other methods for its units, a print
 * allowed to turn, blocks all one way, borders and sashes a little narrower, cut along the selvage or joined, blocks a
 * little smaller. Nothing is planned here, and whether one saves is not known yet.
 * @returns none for a text that cannot be read
 */
export function ideasFor(text: string): Family[] {
  const model = readModel(text);
  if (!model.sound || model.kind === "unreadable") return [];
  const idea = (key: string, change: Change, made: string): Idea[] =>
    made === text ? [] : [{ key, change, text: made }];
  const families: Family[] = [
    ...(valueAt(readText(text), ["style"]) === undefined
      ? [idea("style", { kind: "style", style: "strips-3" }, setStyle(text, "strips-3"))]
      : []),
    ...methods(text, model, idea),
    ...prints(text, model, idea),
    ...model.borders.flatMap((_, i) => borderIdeas(text, model, i, idea)),
    sashes(text, model, idea),
    blockSizes(text, model, idea),
    bindingJoin(text, idea),
  ];
  return families.filter((family) => family.length > 0);
}

type Make = (key: string, change: Change, made: string) => Idea[];

function methods(text: string, model: QuiltModel, idea: Make): Family[] {
  const kinds = new Set(model.blocks.flatMap(({ units }) => units.map(({ cell }) => cell.kind)));
  return [...kinds].flatMap((unit) =>
    (findUnitKind(unit)?.methods ?? [])
      // Templates are chosen for a shape, never for what they take.
      .filter(({ name }) => name !== "templates")
      .map(({ name: method }) =>
        idea(`method/${unit}/${method}`, { kind: "method", unit, method }, setMethod(text, unit, method)),
      ),
  );
}

function prints(text: string, model: QuiltModel, idea: Make): Family[] {
  const printed = model.fabrics.filter(({ print }) => print !== "none");
  const free = printed.map(({ name, index }) =>
    idea(`free/${name}`, { kind: "print-free", fabric: name }, setPrint(text, index, "none")),
  );
  if (printed.length === 0) return free;
  const placed = model.setting.rows.flat();
  const turned = model.blocks
    .filter(({ key }) => new Set(placed.flatMap(({ block, turn }) => (block === key ? [turn] : []))).size > 1)
    .flatMap(({ key, name }) =>
      [0, 90].map((turn) =>
        idea(
          `turned ${key} ${turn}`,
          { kind: "blocks-turned", block: name, turn },
          fillTurns(text, key, "alike", turn),
        ),
      ),
    );
  return [...free, ...turned];
}

function borderIdeas(text: string, model: QuiltModel, i: number, idea: Make): Family[] {
  const border = nth(model.borders, i);
  if (border.block !== "") return [];
  const about = { border: border.name === "" ? i + 1 : border.name, fabric: border.fabric };
  const read = readText(text);
  const written = (field: string): unknown => valueAt(read, ["borders", i, field]);
  const { mark } = rulerOf(model);
  const now = ticksOf(border.width, model.unit);
  const narrower =
    now === null
      ? []
      : NARROWER.filter((marks) => marks * mark < now / 2).flatMap((marks) => {
          const made = widenBorder(text, i, -marks, mark);
          const width = said(readModel(made).borders[i]?.width ?? "", model);
          return idea(`border/${i}/${marks}`, { kind: "border-width", ...about, width }, made);
        });
  const lengthwise = written("cut") === "lengthwise";
  const cut = lengthwise ? "strips" : "lengthwise";
  const path = ["borders", i, "cut"] as const;
  // Cut along the selvage a border is one piece; from strips it is joined, unless the file says how.
  const recut = lengthwise
    ? withoutValue(written("join") === "no" ? withoutValue(text, ["borders", i, "join"]) : text, path)
    : withValue(text, path, cut);
  const join = written("join");
  return [
    narrower,
    idea(`border/${i}/${cut}`, { kind: "border-cut", ...about, cut }, recut),
    join === undefined || join === "straight" || lengthwise
      ? []
      : idea(
          `border/${i}/join`,
          { kind: "border-join", ...about },
          withValue(text, ["borders", i, "join"], "straight"),
        ),
    border.corners === "mitred"
      ? idea(
          `border/${i}/corners`,
          { kind: "border-corners", ...about },
          withoutValue(text, ["borders", i, "corners"]),
        )
      : [],
  ];
}

/** A length of the file with its measure, as it is told. */
const said = (width: string, model: QuiltModel): string =>
  formatLength(ticksOf(width, model.unit) ?? 0, rulerOf(model));

function sashes(text: string, model: QuiltModel, idea: Make): Family {
  const { sashing } = model.setting;
  const now = sashing === null ? null : ticksOf(sashing.width, model.unit);
  if (sashing === null || now === null || sashing.block !== "" || sashing.stoneBlock !== "") return [];
  const { mark } = rulerOf(model);
  return NARROWER.filter((marks) => marks * mark < now / 2).flatMap((marks) => {
    const width = lengthText(now - marks * mark, model);
    return idea(
      `sash ${marks}`,
      { kind: "sash-width", width: said(width, model) },
      setSashing(text, { width, fabric: sashing.fabric }),
    );
  });
}

/** Fields of a cell that give a length of their own, which would not shrink with its block. */
const OWN_LENGTHS = ["corner", "strips", "centre"] as const;

/** All blocks smaller by whole marks in every square, where they are square, alike and have no lengths of their own. */
function blockSizes(text: string, model: QuiltModel, idea: Make): Family {
  const [first] = model.blocks;
  const now = first?.across ?? null;
  const alike = model.blocks.every(
    ({ across, down, xs, ys, cells }) =>
      across === now &&
      down === now &&
      even(xs) &&
      even(ys) &&
      Object.values(cells).every(
        ({ written }) =>
          OWN_LENGTHS.every((field) => written[field] === undefined) &&
          (written.patches === undefined || written["drawn-on"] !== undefined),
      ),
  );
  const pieced =
    model.borders.some(({ block }) => block !== "") || (model.setting.sashing?.block ?? "") !== "";
  if (now === null || !alike || pieced) return [];
  const squares = model.blocks.flatMap(({ columns, rows }) => [columns, rows]).reduce(leastCommonMultiple, 1);
  const step = squares * rulerOf(model).mark;
  return SMALLER.filter((steps) => steps * step <= now / 6).flatMap((steps) => {
    const size = lengthText(now - steps * step, model);
    const made = model.blocks.reduce((all, { key }) => sizeBlock(all, key, size), text);
    return idea(`block ${steps}`, { kind: "block-size", size: said(size, model) }, made);
  });
}

const even = (at: readonly number[]): boolean => {
  const each = at.slice(1).map((end, i) => end - nth(at, i));
  return each.every((one) => Math.abs(one - nth(each, 0)) < 0.5);
};

function leastCommonMultiple(a: number, b: number): number {
  const divisor = (x: number, y: number): number => (y === 0 ? x : divisor(y, x % y));
  return (a * b) / divisor(a, b);
}

function bindingJoin(text: string, idea: Make): Family {
  const written = valueAt(readText(text), ["binding"]);
  if (written === undefined) return [];
  const made =
    typeof written === "object"
      ? withValue(text, ["binding", "join"], "straight")
      : withValue(text, ["binding"], { fabric: String(written), join: "straight" });
  const now = typeof written === "object" ? (written as { join?: unknown; cut?: unknown }) : {};
  return now.join === "straight" || now.cut === "bias"
    ? []
    : idea("binding/join", { kind: "binding-join" }, made);
}
