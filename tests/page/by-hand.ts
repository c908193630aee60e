import type { Page } from "playwright-core";
import { blockNamed, lengthText } from "../../src/edits/block-edits.ts";
import {
  type BlockModel,
  fabricFor,
  type QuiltModel,
  readModel,
  type UnitModel,
} from "../../src/edits/model.ts";
import { fieldNow, fieldsOf } from "../../src/edits/unit-edits.ts";
import { outlinesOf, patchesOf, wordOf } from "../../src/edits/unit-patches.ts";
import { english } from "../../src/words/index.ts";
import { onSquares } from "./from-nothing.ts";
import { squareNamed } from "./hands.ts";

/*
 * A quilt drawn again on the empty sheet by what a hand can reach on the page: buttons pressed by their names, squares
 * taken and drawn over, lengths typed into their fields. What the file says is never written by anything else.
 */

/** What a hand does on the page, in its own words. */
function handOn(page: Page) {
  const button = (name: string | RegExp, within = "body") =>
    page
      .locator(within)
      .getByRole("button", { name, exact: typeof name === "string" })
      .first();
  const press = (name: string | RegExp, within = "body") => button(name, within).click();
  const type = async (field: string, wish: string, within = "main"): Promise<void> => {
    const input = page.locator(within).getByRole("textbox", { name: field, exact: true }).first();
    await input.fill(wish);
    await input.press("Tab");
  };
  const middle = async (name: string) => {
    const box = await page.locator(`.paper [aria-label^="${name},"]`).first().boundingBox();
    if (box === null) throw new Error(`no square ${name}`);
    return [box.x + box.width / 2, box.y + box.height / 2] as const;
  };
  const fabric = async (name: string): Promise<void> => {
    const dot = page.locator(".dots button").filter({ has: page.getByText(name, { exact: true }) });
    if ((await dot.first().getAttribute("aria-pressed")) !== "true") await dot.first().click();
  };
  return {
    press,
    type,
    fabric,
    button,
    /** Two fabrics in hand: the second is taken up before the first. */
    async fabrics(first: string, second: string): Promise<void> {
      await fabric(second);
      await fabric(first);
    },
    async square(name: string): Promise<void> {
      await page.mouse.click(...(await middle(name)));
    },
    async over(from: string, to: string): Promise<void> {
      await page.mouse.move(...(await middle(from)));
      await page.mouse.down();
      await page.mouse.move(...(await middle(to)), { steps: 3 });
      await page.mouse.up();
    },
    async focus(name: string): Promise<void> {
      await page.locator(`.paper [aria-label^="${name},"]`).first().focus();
    },
  };
}

type HandOn = ReturnType<typeof handOn>;
const TURNS: Readonly<Record<number, string>> = { 0: "up", 90: "right", 180: "down", 270: "left" };
async function drawFabrics(page: Page, hand: HandOn, model: QuiltModel): Promise<void> {
  await hand.press("Fabric");
  const sheet = ["night", "lanterns", "chalk"];
  const main = page.locator("main");
  const take = (name: string) => main.getByRole("button", { name, exact: true }).first().click();
  // The sheet's own three are out of the way first, so that no name is taken.
  for (const [i, name] of sheet.entries()) {
    await take(name);
    await hand.type("Name", `sheet ${i}`);
  }
  for (const [i, { name, colour, print, width }] of model.fabrics.entries()) {
    if (i < 3) await take(`sheet ${i}`);
    else await hand.press("Another fabric");
    await hand.type("Name", name);
    await page.locator('input[type="color"]').first().fill(colour);
    if (print !== "none") await hand.press(print === "one-way" ? "one way up" : "both ways", "main");
    if (width !== "") await hand.type("width of its own", width);
  }
  for (let i = model.fabrics.length; i < 3; i++) {
    await take(`sheet ${i}`);
    await hand.press("Take this fabric away");
  }
}

/** Patches drawn by their corners on the points the page offers. */
async function drawCorners(
  page: Page,
  hand: HandOn,
  unit: UnitModel,
  own: BlockModel,
  model: QuiltModel,
): Promise<void> {
  const whole = unit.columns === own.columns && unit.rows === own.rows;
  await hand.focus(squareNamed(unit.column, unit.row));
  await hand.press(whole ? "Draw a patch by its corners" : "Draw corners on this square");
  const paper = page.locator('.paper[role="application"]');
  const view = ((await paper.getAttribute("viewBox")) ?? "").split(" ").map(Number);
  const [left = 0, top = 0, wide = 1, high = 1] = view;
  const [x0, y0] = [own.xs[unit.column]!, own.ys[unit.row]!];
  const across = own.xs[unit.column + unit.columns]! - x0;
  const down = own.ys[unit.row + unit.rows]! - y0;
  for (const { corners, fabric } of patchesOf(unit, own, model) ?? []) {
    await hand.fabric(fabric?.name ?? "");
    await paper.scrollIntoViewIfNeeded();
    const box = await paper.boundingBox();
    if (box === null) throw new Error("no points to draw on");
    const scale = Math.min(box.width / wide, box.height / high);
    for (const [x, y] of corners) {
      // The sheet stands in the middle of the view, with the same margin all round.
      const [fx, fy] = [(x - x0) / across - 0.5, (y - y0) / down - 0.5];
      await page.mouse.click(
        box.x + box.width / 2 + fx * (wide + 2 * left) * scale,
        box.y + box.height / 2 + fy * (high + 2 * top) * scale,
      );
    }
    await hand.press("Close the patch");
  }
  await hand.press("Close the patch");
}

/** A unit laid as the hand does: with two fabrics, then patch by patch. */
async function drawUnit(
  page: Page,
  hand: HandOn,
  unit: UnitModel,
  own: BlockModel,
  model: QuiltModel,
): Promise<void> {
  if (unit.cell.kind === "drawn patches") return drawCorners(page, hand, unit, own, model);
  const across = own.xs[unit.column + unit.columns]! - own.xs[unit.column]!;
  const down = own.ys[unit.row + unit.rows]! - own.ys[unit.row]!;
  const [wide, high] = unit.turn % 180 === 0 ? [across, down] : [down, across];
  const shape = outlinesOf(unit.cell, wide, high, model.unit);
  const parts = shape?.parts ?? [];
  const cloths = parts.map((part) => fabricFor(wordOf(unit.cell, parts, part), own, model)?.name ?? "");
  await hand.fabrics(cloths[0]!, cloths[1] ?? cloths[0]!);
  const kind =
    unit.cell.kind === "rectangle"
      ? "square"
      : unit.cell.kind === "half-rectangle triangle" && unit.columns === unit.rows
        ? "half-square triangle"
        : unit.cell.kind;
  const turned = hand.button(`${kind}, ${TURNS[unit.turn] ?? "up"}`, ".tray");
  if ((await turned.count()) > 0) await turned.click();
  else {
    await page.locator(`.tray [data-unit="${kind}"] .rest`).click();
    const half = hand.button(`${kind}, ${TURNS[unit.turn % 180] ?? "up"}`, ".tray");
    if ((await half.count()) > 0) await half.click();
  }
  const from = squareNamed(unit.column, unit.row);
  const to = squareNamed(unit.column + unit.columns - 1, unit.row + unit.rows - 1);
  if (from === to) await hand.square(from);
  else await hand.over(from, to);
  await hand.focus(from);
  for (const field of fieldsOf(unit.cell.kind)) {
    const wish = fieldNow(unit.cell.written, field);
    if (field === "count") {
      const count = parts.length;
      const more = page.getByRole("button", { name: "strips: more" });
      const less = page.getByRole("button", { name: "strips: less" });
      const now = async () =>
        Number(/\d+/.exec((await page.locator(".fields .figure").first().textContent()) ?? "")?.[0]);
      if (unit.cell.written.strips !== undefined) continue;
      while ((await now()) < count) await more.click();
      while ((await now()) > count) await less.click();
    } else if (field === "leaning") {
      if (wish === "falling") await hand.press("Let it slant the other way");
    } else if (wish !== "")
      await hand.type(
        { strips: "width of each strip", corner: "corner", centre: "centre" }[field as "strips"] ?? field,
        wish,
      );
  }
  await hand.focus(from);
  for (const [i, part] of parts.entries()) {
    const patch = page
      .locator(".patches")
      .getByRole("button", { name: english.unitNames.part(part), exact: true });
    if ((await patch.count()) === 0) continue;
    await hand.fabric(cloths[i]!);
    await patch.first().click();
  }
}

async function drawBlock(page: Page, hand: HandOn, given: BlockModel, model: QuiltModel): Promise<void> {
  const own = onSquares(given);
  const size = (ticks: number | null): string => lengthText(ticks ?? 0, model);
  const facts = page.locator(".facts");
  if ((await facts.getByRole("textbox", { name: "squares", exact: true }).count()) > 0) {
    await hand.type("squares", `${own.columns} x ${own.rows}`, ".facts");
    if ((await facts.getByRole("textbox", { name: "finished", exact: true }).count()) > 0)
      await hand.type("finished", `${size(own.across)} x ${size(own.down)}`, ".facts");
  } else {
    await hand.type("across", String(own.columns), ".facts");
    await hand.type("down", String(own.rows), ".facts");
  }
  if ((await facts.getByRole("textbox", { name: "wide", exact: true }).count()) > 0) {
    await hand.type("wide", size(own.across), ".facts");
    if ((await facts.getByRole("textbox", { name: "high", exact: true }).count()) > 0)
      await hand.type("high", size(own.down), ".facts");
  }
  const even = (all: readonly number[]): boolean =>
    all.slice(1).every((end, i) => Math.abs(end - all[i]! - all[1]!) < 1);
  const sizes = (all: readonly number[]): string =>
    all
      .slice(1)
      .map((end, i) => size(end - all[i]!))
      .join(", ");
  if (!even(own.xs) || !even(own.ys)) {
    await page.getByText("Columns and lines of their own size").click();
    if (!even(own.xs)) await hand.type("columns, from the left", sizes(own.xs));
    if (!even(own.ys)) await hand.type("lines, from the top", sizes(own.ys));
  }
  for (const unit of own.units) await drawUnit(page, hand, unit, own, model);
}

async function setRows(
  page: Page,
  hand: HandOn,
  names: ReadonlyMap<string, string>,
  { setting }: QuiltModel,
) {
  const onPoint = setting.layout === "on point";
  const counts = setting.rows.map((row) => row.length);
  const uneven = !onPoint && counts.some((count) => count !== counts[0]);
  await hand.press("In the quilt");
  if (onPoint) {
    await hand.fabric(setting.triangles);
    await hand.press("on point");
  }
  await hand.type("across", String(uneven ? 1 : Math.max(...counts)), ".size");
  await hand.type("down", String(onPoint ? (counts.length + 1) / 2 : counts.length), ".size");
  const at = (row: number, column: number) => page.locator(`[data-at="${row},${column}"]`);
  const take = async (row: number, column: number): Promise<void> => {
    await at(row, column).click({ force: true });
    await page.getByRole("heading", { name: `row ${row + 1}, block ${column + 1}` }).waitFor();
  };
  for (const [r, row] of setting.rows.entries()) {
    // A row of one block is filled at once, as a hand does that has many to set.
    const most = row.filter(({ block }) => block === row[0]?.block).length;
    const filled = !uneven && names.size > 1 && row.length > 5 && most > row.length / 2;
    for (const [c, placed] of row.entries()) {
      if (filled && c > 0 && placed.block === row[0]?.block && placed.turn === 0) continue;
      if (uneven && c > 0) {
        await take(r, c - 1);
        await hand.press("one more after it");
        await at(r, c).waitFor();
      }
      await take(r, c);
      const name = names.get(placed.block) ?? "";
      const put = hand.button(`Put ${name} here`, ".hand");
      if ((await put.count()) > 0) await put.click();
      if (filled && c === 0) await hand.press("in all of this row", ".hand");
      const turn = page.locator(".hand .four button").nth(placed.turn / 90);
      if ((await turn.getAttribute("aria-pressed")) !== "true") await turn.click();
    }
  }
  if (setting.turn % 180 !== 0) await hand.press("in columns");
}

/** Placed blocks in colours of their own, word by word. */
async function setColourways(page: Page, hand: HandOn, model: QuiltModel): Promise<void> {
  for (const [r, row] of model.setting.rows.entries())
    for (const [c, placed] of row.entries()) {
      const own = blockNamed(model, placed.block);
      if (placed.colourway === "" || own === null) continue;
      await page.locator(`[data-at="${r},${c}"]`).click({ force: true });
      await page.getByRole("heading", { name: `row ${r + 1}, block ${c + 1}` }).waitFor();
      const changed = new Map<string, string>();
      for (const unit of own.units)
        for (const { word, fabric } of patchesOf(unit, own, model) ?? []) {
          const there = fabricFor(word, own, model, placed.colourway);
          if (fabric !== null && there !== null && there.name !== fabric.name)
            changed.set(fabric.name, there.name);
        }
      for (const [from, to] of changed) {
        await hand.fabric(to);
        await hand.press(`${from} in ${to}`);
      }
    }
}

/** Whether a block of a ring is on the table: then it is drawn, and the quilt looked at again. */
async function drawRingBlock(page: Page, hand: HandOn, key: string, model: QuiltModel): Promise<void> {
  await page.locator(".spread.draw").waitFor();
  await drawBlock(page, hand, blockNamed(model, key)!, model);
  await hand.press("In the quilt");
}

async function setSashing(page: Page, hand: HandOn, model: QuiltModel): Promise<void> {
  const { sashing } = model.setting;
  if (sashing === null) return;
  const first = model.fabrics[0]!.name;
  await hand.fabric(sashing.fabric || first);
  await hand.press("Add sashing");
  await hand.type("Sashing, width", sashing.width);
  if (sashing.ring) await hand.press("all round", ".hand");
  if (sashing.cornerstones !== "" || sashing.stoneBlock !== "") {
    await hand.fabrics(sashing.cornerstones || first, sashing.cornerstones || first);
    await hand.press("cornerstones", ".hand");
  }
  if (sashing.block !== "") {
    await hand.press("Piece it", ".hand");
    await drawRingBlock(page, hand, sashing.block, model);
  }
  if (sashing.stoneBlock === "") return;
  await hand.press("Piece the cornerstones", ".hand");
  await drawRingBlock(page, hand, sashing.stoneBlock, model);
}

async function setBorders(page: Page, hand: HandOn, model: QuiltModel): Promise<void> {
  const first = model.fabrics[0]!.name;
  for (const [i, border] of model.borders.entries()) {
    await hand.fabric(border.fabric || first);
    await hand.press("Add a border");
    const width = page.getByRole("textbox", { name: new RegExp(`^border ${i + 1}, .*, width$`) });
    if (border.width !== "") {
      await width.fill(border.width);
      await width.press("Tab");
    }
    if (border.corners === "mitred") await hand.press("mitred corners", ".hand");
    if (border.block !== "") {
      await hand.fabrics(first, border.stones || first);
      await hand.press("Piece it", ".rings");
      await drawRingBlock(page, hand, border.block, model);
      const ring = page.locator(".rings .ring").nth(i);
      if ((await ring.getAttribute("aria-pressed")) !== "true") await ring.click();
    }
    const squares = page.locator(".rings").getByRole("button", { name: "corner squares", exact: true });
    const there = (await squares.getAttribute("aria-pressed")) === "true";
    if (there === (border.stones !== "")) continue;
    if (!there) await hand.fabrics(first, border.stones);
    await squares.click();
  }
}

async function setFinishing(hand: HandOn, model: QuiltModel): Promise<void> {
  for (const what of ["binding", "backing"] as const) {
    const fabric = model[what];
    if (fabric === "") {
      const none = hand.button(`${what}: none`);
      if ((await none.count()) > 0) await none.click();
      continue;
    }
    await hand.fabric(fabric);
    const use = hand.button(`${what}: In ${fabric}`);
    if ((await use.count()) > 0) await use.click();
  }
  if (model.wadding) await hand.press("wadding: Add it");
}

/** Draws the quilt of a text by hand, from its fabrics to its binding. The page stands on the whole quilt after. */
export async function drawByHand(page: Page, text: string): Promise<void> {
  const model = readModel(text);
  const hand = handOn(page);
  await hand.press(/^An empty sheet/);
  await hand.type("Name", model.name, ".selvage");
  await drawFabrics(page, hand, model);
  await hand.press("Draw");
  const inRows = new Set(model.setting.rows.flat().map(({ block }) => block));
  const names = new Map<string, string>();
  for (const own of model.blocks.filter(({ key }) => inRows.has(key))) {
    if (names.size > 0) await hand.press("Another block");
    else if ((await page.locator(".spread.draw").count()) === 0) await hand.press(/^A, \d/);
    await drawBlock(page, hand, own, model);
    const name = `${own.name} ${names.size + 1}`;
    await hand.type("Name of the block", name);
    names.set(own.key, name);
  }
  await setRows(page, hand, names, model);
  await setColourways(page, hand, model);
  await setSashing(page, hand, model);
  await setBorders(page, hand, model);
  await setFinishing(hand, model);
}
