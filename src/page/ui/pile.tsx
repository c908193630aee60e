import type { FabricModel } from "../../edits/model.ts";
import { fabricKey } from "../../planning.ts";
import type { Amount } from "../planner/amounts.ts";
import { words } from "../words/index.ts";
import { paintsOf, Textures } from "./draw/cloth.tsx";
import {
  type AmountState,
  amountText,
  changeOf,
  changesSaid,
  foldSaid,
  foldsOf,
  stateOf,
  sumText,
} from "./fabric/amount-lines.ts";
import { photoFill } from "./fabric/photo-fills.tsx";
import * as state from "./state.ts";

export const fabricNamed = (name: string): FabricModel | null =>
  state.model.value.fabrics.find((fabric) => fabricKey(fabric.name) === fabricKey(name)) ?? null;

/** What cloth of a name is filled with where it has a photo; null where it has none. */
export function photoNamed(name: string): string | null {
  const fabric = fabricNamed(name);
  return fabric === null ? null : photoFill("", fabric, null);
}

/** Folded cloth: one fold is an eighth of a yard, so that a change is a fold before it is a number. */
export function Folds({ amount, wide = 62, high = 5 }: { amount: Amount; wide?: number; high?: number }) {
  const fabric = fabricNamed(amount.fabric);
  const folds = foldsOf(amount);
  const prefix = `fo${fabric?.index ?? 0}-`;
  const { ground, texture } = paintsOf(prefix, fabric);
  const height = Math.max(1, folds) * high + 1;
  return (
    <svg class="folds" width={wide} height={height} viewBox={`0 0 ${wide} ${height}`} aria-hidden="true">
      {fabric === null ? null : <Textures prefix={prefix} fabrics={state.model.value.fabrics} tile={7} />}
      {Array.from({ length: folds }, (_, i) => {
        const d = `M${wide - 0.5} ${i * high + 0.5}H4a${high / 2} ${high / 2} 0 0 0 0 ${high}H${wide - 0.5}`;
        return (
          <g key={i}>
            <path class="fo1" d={d} fill={fabric === null ? amount.colour : ground} />
            {texture === null ? null : <path d={d} fill={texture} />}
            <path class="hair2" d={d} fill="none" />
          </g>
        );
      })}
      {folds === 0 ? <path class="hair2" d={`M1 ${height - 1}H${wide}`} stroke-dasharray="3 3" /> : null}
    </svg>
  );
}

/** A seam for how far an amount is: dots, a running stitch with its needle, a double line with a knot, a cut thread. */
export function Proof({ of }: { of: AmountState }) {
  const seam = {
    before: <path d="M1 4H43" stroke-dasharray="1 4" />,
    "so-far": (
      <>
        <path d="M1 4H28" stroke-dasharray="5 3" />
        <path class="needle" d="M31 4H43" />
      </>
    ),
    found: <path d="M1 4H43" stroke-dasharray="5 3" />,
    proven: (
      <>
        <path d="M1 2.6H38M1 5.4H38" />
        <circle class="knot" cx="40" cy="4" r="3" />
      </>
    ),
    none: <path d="M1 4H18M26 4H43M19 1l6 6M25 1l-6 6" />,
  }[of];
  return (
    <span class={`state ${of}`} title={words.stateMeans[of]}>
      <svg viewBox="0 0 44 8" aria-hidden="true">
        {seam}
      </svg>
      {words.states[of]}
    </span>
  );
}

/** What is meant by how far the amounts in sight are, each said once. */
export function StatesMean({ of }: { of: readonly Amount[] }) {
  const there = [...new Set(of.map(stateOf))].filter((one) => one !== "before");
  return (
    <p class="quiet mean">
      {there.map((one) => (
        <span key={one}>
          <i class={one}>{words.states[one]}</i>: {words.stateMeans[one]}{" "}
        </span>
      ))}
    </p>
  );
}

function openFabric(name: string): void {
  state.opened.value = name;
  state.region.value = "fabric";
}

/** The pile of fabric: what there is to buy, one line a fabric, always beside the work. */
export function Pile() {
  const all = state.amounts.value?.fabrics ?? [];
  const failed = state.progress.value === "failed";
  const empty = state.laid.value.empty;
  return (
    <section class="leaf pile" aria-labelledby="pile-title">
      <h3 id="pile-title">{words.toBuy}</h3>
      <ul>
        {all.map((amount) => {
          const change = changeOf(amount);
          return (
            <li key={amount.fabric}>
              <button type="button" class="fold" onClick={() => openFabric(amount.fabric)}>
                <Folds amount={amount} />
                <Proof of={stateOf(amount)} />
                <span class="fname">
                  {amount.fabric}
                  {change === null ? null : <span class="change">{change.text}</span>}
                </span>
                <span class="amount">{failed ? "–" : amountText(amount)}</span>
              </button>
            </li>
          );
        })}
      </ul>
      <p class="sum">
        <span>{failed ? "" : words.sum(sumText(all), state.amounts.value?.total ?? "")}</span>
        <span class="quiet">{empty > 0 ? words.leftEmpty(empty) : changesSaid()}</span>
      </p>
      <p class="hint">{words.hints.pile(foldSaid())}</p>
      <StatesMean of={all} />
    </section>
  );
}

/** The pile in short, at the foot of a phone: always in sight. */
export function ShortPile() {
  const all = state.amounts.value?.fabrics ?? [];
  // At the table the foot is for strips and steps.
  if (state.region.value === "cut" || state.region.value === "sew") return null;
  return (
    <nav class="short" aria-label={words.toBuy}>
      {all.length > 0 ? null : <span class="quiet nothing">{words.nothingYet}</span>}
      {all.map((amount) => (
        <button key={amount.fabric} type="button" onClick={() => openFabric(amount.fabric)}>
          <Folds amount={amount} wide={42} high={3} />
          <b>{state.progress.value === "failed" ? "–" : amountText(amount)}</b>
          <span>{amount.fabric}</span>
          <i class={stateOf(amount)}>{words.states[stateOf(amount)]}</i>
        </button>
      ))}
    </nav>
  );
}
