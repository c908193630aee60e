import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { words } from "../words/index.ts";
import * as state from "./state.ts";

/** Step of the tour one is at; null outside it. */
const at = signal<number | null>(null);

interface Step {
  said(): string;
  /** What is to be tapped, marked while the step is open. */
  target: string;
  /** The step is done; what was so when it began is handed in. */
  done(before: Scene): boolean;
}

/** What the steps look at. */
interface Scene {
  geese: number;
  turns: string;
  units: number;
  fabric: number;
}

function scene(): Scene {
  const units = state.model.value.blocks.flatMap((block) => block.units);
  return {
    geese: units.filter(({ cell }) => cell.kind === "flying geese").length,
    turns: units.map(({ turn }) => turn).join(),
    units: units.length,
    fabric: state.firstFabric.value,
  };
}

const spans = (): boolean =>
  state.model.value.blocks.some(({ units }) => units.some(({ columns, rows }) => columns > 1 && rows > 1));
const said = () => words.tourSteps;

const STEPS: readonly Step[] = [
  {
    said: () => said().unit,
    target: '.tray [data-unit="flying geese"]',
    done: () => state.unitInHand.value === "flying geese",
  },
  { said: () => said().lay, target: ".paper", done: ({ geese }) => scene().geese > geese },
  { said: () => said().turn, target: ".paper", done: ({ turns }) => scene().turns !== turns },
  { said: () => said().fabric, target: ".dots", done: ({ fabric }) => state.firstFabric.value !== fabric },
  { said: () => said().large, target: ".paper", done: spans },
  { said: () => said().quilt, target: ".inquilt", done: () => state.sheet.value === "quilt" },
  {
    said: () => said().place,
    target: ".paper.quilt",
    done: () => state.model.value.setting.rows.some((row) => row.some(({ turn }) => turn !== 0)),
  },
  { said: () => said().border, target: ".hand", done: () => state.model.value.borders.length > 0 },
  { said: () => said().why, target: ".pile, .short", done: () => state.region.value === "fabric" },
  { said: () => said().save, target: ".saving", done: () => state.savings.value !== null },
  { said: () => said().end, target: "", done: () => false },
];

let before: Scene | null = null;

/** Begins the tour on the quilt on the table. */
export function startTour(): void {
  at.value = 0;
  before = scene();
}

function goOn(): void {
  at.value = at.value === null || at.value + 1 >= STEPS.length ? null : at.value + 1;
  before = scene();
}

/** One sentence at a time, each done with the hand and seen to be done: there is nothing to read and click away. */
export function Tour() {
  const now = at.value;
  const step = now === null ? undefined : STEPS[now];
  // The text stands for what is drawn: every step is looked at again when it changes.
  const seen = [
    state.text.value,
    state.unitInHand.value,
    state.firstFabric.value,
    state.sheet.value,
    state.region.value,
    state.savings.value !== null,
  ];
  useEffect(() => {
    if (state.region.value === "first") at.value = null;
    else if (step?.done(before ?? scene()) === true) goOn();
  }, [now, ...seen]);
  useEffect(() => {
    const target = step === undefined || step.target === "" ? null : document.querySelector(step.target);
    target?.setAttribute("data-tour", "");
    return () => target?.removeAttribute("data-tour");
  }, [now, ...seen]);
  if (step === undefined || now === null) return null;
  const last = now === STEPS.length - 1;
  return (
    <section class="tour" aria-label={words.tourStart}>
      <b aria-live="polite">{step.said()}</b>
      <span class="quiet">{words.tourStep(now + 1, STEPS.length)}</span>
      {last ? null : (
        <button type="button" class="act" onClick={goOn}>
          {words.tourSkip}
        </button>
      )}
      <button type="button" class="act" onClick={() => (at.value = null)}>
        {words.tourLeave}
      </button>
    </section>
  );
}
