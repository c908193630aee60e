import type { Locator, Page } from "playwright-core";

/** One way of using the page: with a mouse, with a finger, with keys alone. */
export interface Hand {
  /** Presses a button by its name. */
  press(name: string | RegExp, within?: string): Promise<void>;
  /** Takes a square of the paper and does with it what a tap does. */
  square(name: string): Promise<void>;
  /** Lays what is in hand over several squares. */
  over(from: string, to: string): Promise<void>;
}

/** A square of the paper by its name: lines by letter, squares by number. */
export const squareNamed = (column: number, row: number): string =>
  `${row < 26 ? String.fromCharCode(97 + row) : String.fromCharCode(96 + Math.floor(row / 26), 97 + (row % 26))}${column + 1}`;

const button = (page: Page, name: string | RegExp, within = "body"): Locator =>
  page
    .locator(within)
    .getByRole("button", { name, exact: typeof name === "string" })
    .first();

const cell = (page: Page, name: string): Locator => page.locator(`.paper [aria-label^="${name},"]`).first();

export function mouse(page: Page): Hand {
  const middle = async (name: string) => {
    const box = await cell(page, name).boundingBox();
    if (box === null) throw new Error(`no square ${name}`);
    return [box.x + box.width / 2, box.y + box.height / 2] as const;
  };
  return {
    press: (name, within) => button(page, name, within).click(),
    async square(name) {
      await cell(page, name).scrollIntoViewIfNeeded();
      await page.mouse.click(...(await middle(name)));
    },
    async over(from, to) {
      await cell(page, to).scrollIntoViewIfNeeded();
      await page.mouse.move(...(await middle(from)));
      await page.mouse.down();
      await page.mouse.move(...(await middle(to)), { steps: 4 });
      await page.mouse.up();
    },
  };
}

export function finger(page: Page): Hand {
  const press: Hand["press"] = async (name, within) => {
    // On a phone a unit opens to its turns once it is in hand.
    const [unit = "", turn] = typeof name === "string" ? name.split(", ") : [];
    const closed =
      turn !== undefined && (await page.locator(`.tray [aria-label="${name}"]:visible`).count()) === 0;
    if (closed && within === undefined) await button(page, unit, ".tray").tap();
    await button(page, name, within).tap();
  };
  /** The units lie over the foot of a phone: a square is brought to the middle first, as a thumb does. */
  const tapped = async (name: string) => {
    await cell(page, name).evaluate((one) => one.scrollIntoView({ block: "center" }));
    await cell(page, name).tap({ force: true });
  };
  return {
    press,
    square: tapped,
    async over(from, to) {
      await press("Over several squares");
      await tapped(from);
      await tapped(to);
    },
  };
}

/** A finger drawn over the screen from one square to another, as a browser hears it. Returns how far the page went along. */
export async function fingerOver(page: Page, from: string, to: string): Promise<number> {
  await cell(page, from).evaluate((one) => one.scrollIntoView({ block: "center" }));
  const middle = async (name: string) => {
    const box = await cell(page, name).boundingBox();
    if (box === null) throw new Error(`no square ${name}`);
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  };
  const [a, b] = [await middle(from), await middle(to)];
  const scrolled = () => page.evaluate(() => scrollY);
  const before = await scrolled();
  const touch = await page.context().newCDPSession(page);
  const send = (type: "touchStart" | "touchMove" | "touchEnd", at: { x: number; y: number }[]) =>
    touch.send("Input.dispatchTouchEvent", { type, touchPoints: at });
  await send("touchStart", [a]);
  for (let i = 1; i <= 8; i++)
    await send("touchMove", [{ x: a.x + ((b.x - a.x) * i) / 8, y: a.y + ((b.y - a.y) * i) / 8 }]);
  await send("touchEnd", []);
  await touch.detach();
  return (await scrolled()) - before;
}

const COLUMNS = /^([a-z]+)(\d+)$/;

/** Where the keyboard is: the name of what has the focus. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement;
    return at?.getAttribute("aria-label") ?? at?.textContent?.trim() ?? "";
  });

export function keys(page: Page): Hand {
  const key = (name: string) => page.keyboard.press(name);
  /** A key that moves on: the page has a moment to bring the focus along. */
  const step = async (name: string): Promise<void> => {
    const before = await focused(page);
    await key(name);
    for (let i = 0; i < 50 && (await focused(page)) === before; i++) await page.waitForTimeout(20);
  };
  /** Tabs until what has the focus says so; a group of things is one stop, in which arrows move. */
  const tabTo = async (there: (name: string) => boolean): Promise<void> => {
    for (let i = 0; i < 120; i++) {
      if (there(await focused(page))) return;
      await key("Tab");
    }
    throw new Error("not to be reached by Tab");
  };
  const onPaper = async (name: string) => {
    await tabTo((label) => COLUMNS.test(label.split(",")[0] ?? ""));
    for (let i = 0; i < 60; i++) {
      const [, row = "", column = ""] = COLUMNS.exec((await focused(page)).split(",")[0] ?? "") ?? [];
      const [, toRow = "", toColumn = ""] = COLUMNS.exec(name) ?? [];
      if (row === toRow && column === toColumn) return;
      if (row !== toRow) await step(row < toRow ? "ArrowDown" : "ArrowUp");
      else await step(Number(column) < Number(toColumn) ? "ArrowRight" : "ArrowLeft");
    }
    throw new Error(`square ${name} not reached`);
  };
  return {
    async press(name, within) {
      const target = button(page, name, within);
      const group = await target.evaluate((one) =>
        one.closest(".tray ul") ? "tray" : one.closest(".dots") ? "dots" : "",
      );
      if (group === "")
        await tabTo((label) => (typeof name === "string" ? label === name : name.test(label)));
      else {
        const inside = () =>
          page.evaluate(
            (which) => document.activeElement?.closest(which === "tray" ? ".tray ul" : ".dots") != null,
            group,
          );
        for (let i = 0; i < 120 && !(await inside()); i++) await key("Tab");
        const wanted = await target.evaluate(
          (one) => one.getAttribute("aria-label") ?? one.textContent ?? "",
        );
        const [unit = "", turn] = group === "tray" ? wanted.split(", ") : [wanted, undefined];
        for (let i = 0; i < 60; i++) {
          const at = await focused(page);
          if (at.split(", second")[0] === wanted.split(", second")[0]) break;
          await step(
            group === "dots"
              ? "ArrowRight"
              : at.split(", ")[0] !== unit
                ? "ArrowDown"
                : turn === undefined
                  ? "Enter"
                  : "ArrowRight",
          );
        }
        if ((await focused(page)).split(", second")[0] !== wanted.split(", second")[0])
          throw new Error(`${wanted} not reached`);
      }
      await key("Enter");
    },
    async square(name) {
      await onPaper(name);
      await key("Enter");
    },
    async over(from, to) {
      await onPaper(from);
      const [, row = "", column = ""] = COLUMNS.exec(from) ?? [];
      const [, toRow = "", toColumn = ""] = COLUMNS.exec(to) ?? [];
      for (let i = Number(column); i < Number(toColumn); i++) await step("Shift+ArrowRight");
      for (let i = row.charCodeAt(0); i < toRow.charCodeAt(0); i++) await step("Shift+ArrowDown");
      await key("Enter");
    },
  };
}

/** From the first open to a star in three colours, nine times with a border: what a newcomer does. */
export async function drawStarQuilt(hand: Hand): Promise<void> {
  await hand.press(/^An empty sheet/);
  await hand.press(/^chalk, fabric 3/);
  for (const [turn, square] of [
    ["down", "a2"],
    ["up", "d2"],
    ["right", "b1"],
    ["left", "b4"],
  ] as const) {
    await hand.press(`flying geese, ${turn}`);
    await hand.square(square);
  }
  await hand.press("square", ".tray");
  for (const square of ["a1", "a4", "d1", "d4"]) await hand.square(square);
  await hand.press(/^lanterns, fabric 2/);
  await hand.over("b2", "c3");
  await hand.press("In the quilt");
  await hand.press("Add a border");
}
