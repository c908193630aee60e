import { useEffect, useRef } from "preact/hooks";
import {
  addFabric,
  fabricIsUsed,
  removeFabric,
  renameFabric,
  setCloth,
  setColour,
  setOwnCloth,
} from "../../../edits/fabric-edits.ts";
import type { FabricModel } from "../../../edits/model.ts";
import {
  EIGHTH_INCH_RULER,
  fabricKey,
  formatLength,
  QUARTER_CENTIMETRE_RULER,
  typeset,
} from "../../../planning.ts";
import type { Amount } from "../../planner/amounts.ts";
import { words, written } from "../../words/index.ts";
import { edit } from "../actions.ts";
import { Swatch } from "../draw/cloth.tsx";
import { Faults } from "../faults.tsx";
import { Field } from "../field.tsx";
import { Folds, fabricNamed, Proof, StatesMean } from "../pile.tsx";
import * as state from "../state.ts";
import { Label } from "../steps.tsx";
import { typedInto } from "../typed-into.ts";
import { amountText, changeOf, isUnchanged, stateOf, sumText } from "./amount-lines.ts";
import { Choices } from "./choices.tsx";
import { DrawerLeaf } from "./drawer-leaf.tsx";
import { photoOf } from "./photo-fills.tsx";
import { renamePictured } from "./photo-hand.ts";
import { PrintLeaf } from "./photo-leaf.tsx";
import { SavingsList } from "./savings-list.tsx";

const rulerNow = () =>
  ["in", "yd"].includes(state.model.value.unit) ? EIGHTH_INCH_RULER : QUARTER_CENTIMETRE_RULER;
const short = (ticks: number): string => formatLength(ticks, rulerNow(), { typeset: true, ...written });

/** Each use once, in short: how its units are made is told where the fabric is opened. */
function usesOf(amount: Amount): string {
  const all = amount.pieces.flatMap(({ uses }) => uses.map((use) => use.split(/[:,]/)[0] ?? ""));
  return [...new Set(all)].slice(0, 5).join(", ");
}

/** A fabric of the table: what to buy of it, whether less would do, and what changed. */
function TableLine({ amount, failed }: { amount: Amount; failed: boolean }) {
  const change = changeOf(amount);
  const open = state.opened.value === amount.fabric;
  return (
    <tr class={open ? "open" : ""}>
      <th scope="row">
        <div>
          <Folds amount={amount} wide={120} high={11} />
          <span>
            <button
              type="button"
              class="act"
              aria-pressed={open}
              onClick={() => (state.opened.value = open ? null : amount.fabric)}
            >
              {amount.fabric}
            </button>
            <span class="quiet uses">{usesOf(amount)}</span>
          </span>
        </div>
      </th>
      <td class="amount">{failed ? "–" : amountText(amount)}</td>
      <td>
        <Proof of={stateOf(amount)} />
      </td>
      <td>
        {change !== null ? (
          <span class="change">{change.text}</span>
        ) : isUnchanged(amount) ? (
          <span class="quiet">{words.unchanged}</span>
        ) : null}
      </td>
      <td>{amount.price}</td>
      <td>{amount.uncut === 0 ? "" : short(amount.uncut)}</td>
    </tr>
  );
}

function Table() {
  const all = state.amounts.value?.fabrics ?? [];
  const failed = state.progress.value === "failed";
  return (
    <table class="bigpile">
      <thead>
        <tr>
          <th scope="col">{words.columns.fabric}</th>
          <th scope="col">{words.columns.buy}</th>
          <th scope="col">{words.columns.least}</th>
          <th scope="col">{words.columns.change}</th>
          <th scope="col">{words.columns.price}</th>
          <th scope="col">{words.columns.uncut}</th>
        </tr>
      </thead>
      <tbody>
        {all.map((amount) => (
          <TableLine key={amount.fabric} amount={amount} failed={failed} />
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">{words.sumLabel(all.length)}</th>
          <td class="amount">{failed ? "" : sumText(all)}</td>
          <td />
          <td />
          <td>{state.amounts.value?.total}</td>
          <td />
        </tr>
      </tfoot>
    </table>
  );
}

function Why({ amount }: { amount: Amount }) {
  return (
    <>
      <h3>{words.why(amountText(amount))}</h3>
      <ul class="why">
        {amount.pieces.map(({ letter, count, size, uses }) => (
          <li key={letter}>
            <span class="bag">{letter}</span>
            <span>{typeset(words.whyPiece(count, size))}</span>
            <span class="quiet">{typeset(uses.join(", "))}</span>
          </li>
        ))}
      </ul>
      <ul class="why strips">
        {amount.strips.map(({ count, width, lengthwise }, i) => (
          <li key={i}>{words.whyStrips(count, short(width), lengthwise)}</li>
        ))}
      </ul>
    </>
  );
}

/** Another name for a fabric; false where it cannot have it, which is said. */
function rename(fabric: FabricModel, wish: string): boolean {
  const taken = state.model.value.fabrics.some(
    (one) => one.index !== fabric.index && fabricKey(one.name) === fabricKey(wish),
  );
  if (wish === "" || taken) {
    state.said.value = wish === "" ? words.nameWanted : words.nameTaken(wish);
    return false;
  }
  const photo = photoOf(fabric);
  if (photo !== null) renamePictured(fabric, photo, wish);
  if (photo !== null || edit((text) => renameFabric(text, fabric.index, wish), wish))
    state.opened.value = wish;
  return true;
}

/** What can be told of a fabric in a word: its name, a width of its own, its colour. */
function ClothFields({ fabric }: { fabric: FabricModel }) {
  const { name } = fabric;
  return (
    <div class="row fields">
      <label>
        <span>{words.fabricName}</span>
        <Field
          value={name}
          onChange={({ currentTarget }) => {
            if (!rename(fabric, currentTarget.value.trim())) currentTarget.value = name;
          }}
        />
      </label>
      <label>
        <span>{words.ownWidth}</span>
        <Field
          value={fabric.width}
          placeholder={String(state.model.value.cloth.width ?? "43 in")}
          onChange={({ currentTarget }) =>
            typedInto(
              currentTarget,
              fabric.width,
              (text, wish) => setOwnCloth(text, fabric.index, "width", wish),
              words.wide,
              words.wrongCloth.width,
            )
          }
        />
      </label>
      <label>
        <span>{words.colour}</span>
        <input
          type="color"
          value={fabric.colour}
          onChange={({ currentTarget }) =>
            edit((text) => setColour(text, fabric.index, currentTarget.value), `${name}: ${words.colour}`)
          }
        />
      </label>
    </div>
  );
}

function ClothLeaf({ name }: { name: string }) {
  const fabric = fabricNamed(name);
  const amount = state.amounts.value?.fabrics.find((one) => one.fabric === name);
  if (fabric === null) return null;
  const used = fabricIsUsed(state.text.value, fabric.index);
  return (
    <section class="leaf clothleaf" aria-label={name}>
      <h2>
        <Swatch fabric={fabric} size={40} /> {name}
      </h2>
      {amount === undefined ? null : <Why amount={amount} />}
      <ClothFields fabric={fabric} />
      <PrintLeaf fabric={fabric} />
      {used || state.model.value.fabrics.length < 2 ? null : (
        <Label
          onClick={() => {
            state.opened.value = null;
            edit((text) => removeFabric(text, fabric.index), words.takeFabricAway);
          }}
        >
          {words.takeFabricAway}
        </Label>
      )}
    </section>
  );
}

const MORE_COLOURS = ["#6f8a52", "#ad4234", "#7d9fb5", "#8b5a78", "#5b4a3c", "#c9b18a"];

function Shop() {
  const { cloth } = state.model.value;
  const field = (what: "width" | "sold" | "price", label: string, usual: string) => (
    <label key={what}>
      <span>{label}</span>
      <Field
        value={String(cloth[what] ?? "")}
        placeholder={usual}
        onChange={({ currentTarget }) =>
          typedInto(
            currentTarget,
            String(cloth[what] ?? ""),
            (text, wish) => setCloth(text, what, wish),
            label,
            words.wrongCloth[what],
          )
        }
      />
    </label>
  );
  return (
    <div class="shop">
      <h3>{words.shop}</h3>
      <div class="row fields">
        {field("width", words.wide, "43 in")}
        {field("sold", words.atATime, "by 1/8 yd")}
        {field("price", words.perYard, "$12.50 per yd")}
      </div>
      <div class="row">
        <Label
          onClick={() => {
            const { fabrics } = state.model.value;
            const name = words.newFabric(fabrics.length + 1);
            edit((text) => addFabric(text, name, MORE_COLOURS[fabrics.length % MORE_COLOURS.length]!), name);
            state.opened.value = name;
          }}
        >
          {words.anotherFabric}
        </Label>
        {state.model.value.fabrics
          .filter(({ name }) => state.amounts.value?.fabrics.every(({ fabric }) => fabric !== name) ?? false)
          .map((fabric) => (
            <button
              key={fabric.name}
              type="button"
              class="act"
              onClick={() => (state.opened.value = fabric.name)}
            >
              <Swatch fabric={fabric} /> {fabric.name}
            </button>
          ))}
      </div>
    </div>
  );
}

/** The pile grown to a table, and the fabric in hand opened beside it. */
export function FabricRegion() {
  const leaf = useRef<HTMLDivElement>(null);
  const opened = state.opened.value;
  // Where all stands below one another, what was opened comes to the hand.
  useEffect(() => {
    const top = leaf.current?.getBoundingClientRect().top ?? 0;
    if (opened !== null && top > window.innerHeight - 200) leaf.current?.scrollIntoView({ block: "start" });
  }, [opened]);
  return (
    <div class="spread fab">
      <section class="leaf" aria-label={words.toBuy}>
        <h2>{words.toBuy}</h2>
        <Table />
        <StatesMean of={state.amounts.value?.fabrics ?? []} />
        <p class="quiet estimates">{words.estimates}</p>
      </section>
      <div ref={leaf} class="side1 opened">
        {state.opened.value === null ? (
          <p class="quiet">{words.openFabric}</p>
        ) : (
          <ClothLeaf key={state.opened.value} name={state.opened.value} />
        )}
        <section class="leaf saving" aria-label={words.whatWouldSave}>
          <SavingsList />
        </section>
      </div>
      <section class="leaf" aria-label={words.shop}>
        <Shop />
        <DrawerLeaf />
        <Faults />
      </section>
      <div class="side1">
        <section class="leaf" aria-label={words.choicesTitle}>
          <Choices />
        </section>
      </div>
    </div>
  );
}
