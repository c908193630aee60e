import { useState } from "preact/hooks";
import { fabricKey, type StashCloth } from "../../../planning.ts";
import type { Covered } from "../../planner/messages.ts";
import { UNIT } from "../../planner/picture.ts";
import { words } from "../../words/index.ts";
import { lookInDrawer } from "../actions.ts";
import { paintsOf, Textures } from "../draw/cloth.tsx";
import { fabricNamed } from "../pile.tsx";
import * as state from "../state.ts";
import { Label, sizeSaid } from "../steps.tsx";
import { amountText } from "./amount-lines.ts";
import {
  chooseDrawer,
  clothsOf,
  drawerRead,
  putBackDrawer,
  putIn,
  saveDrawer,
  takeOut,
} from "./drawer-hand.ts";

/** Pixels to a millimetre of fabric in the drawer, and the longest piece that is drawn in full. */
const SCALE = 0.09;
const LONGEST = 1200;
/** Most pieces that are drawn on one another; how many there are stands beside. */
const MOST_DRAWN = 4;

/** A few pieces of one size on one another, all to one scale. */
function Pieces({ cloth }: { cloth: StashCloth }) {
  const fabric = fabricNamed(cloth.fabric);
  const [wide, high] = [cloth.across, cloth.along].map((ticks) => Math.min(LONGEST, ticks / UNIT) * SCALE);
  const drawn = Math.min(MOST_DRAWN, cloth.count);
  const [w = 1, h = 1] = [wide, high];
  const prefix = `dr${fabric?.index ?? ""}-`;
  const { ground, texture } = paintsOf(prefix, fabric);
  const fill = fabric === null ? "var(--rule)" : ground;
  const size = { width: w + 4 * (drawn - 1) + 2, height: h + 4 * (drawn - 1) + 2 };
  return (
    <svg class="heap" {...size} aria-hidden="true">
      {fabric === null ? null : <Textures prefix={prefix} fabrics={[fabric]} tile={7} mm={SCALE} />}
      {Array.from({ length: drawn }, (_, i) => {
        const box = { x: 1 + 4 * i, y: 1 + 4 * i, width: w, height: h };
        return (
          <g key={i}>
            <rect class="fo1" {...box} fill={fill} />
            {texture === null ? null : <rect {...box} fill={texture} />}
          </g>
        );
      })}
    </svg>
  );
}

function Heap({ name, cloths }: { name: string; cloths: readonly StashCloth[] }) {
  const count = cloths.reduce((sum, cloth) => sum + cloth.count, 0);
  return (
    <li>
      <h4>{words.cloth.drawerHeap(name, count)}</h4>
      <ul class="heaps">
        {cloths.map((cloth, i) => {
          const size = sizeSaid(cloth.across, cloth.along);
          return (
            <li key={i}>
              <Pieces cloth={cloth} />
              <span>{words.cloth.drawerPiece(size, cloth.count)}</span>
              {cloth.note === "" ? null : <span class="quiet">{cloth.note}</span>}
              <button
                type="button"
                class="act"
                aria-label={words.cloth.drawerTake(cloth.fabric, size)}
                onClick={() => takeOut(cloth)}
              >
                {words.cloth.drawerTakeOne}
              </button>
            </li>
          );
        })}
      </ul>
    </li>
  );
}

/** Fabrics with their pieces, in the order in which the table has them first. */
function heapsOf(cloths: readonly StashCloth[]): { name: string; cloths: StashCloth[] }[] {
  const heaps = new Map<string, { name: string; cloths: StashCloth[] }>();
  for (const cloth of cloths) {
    const key = fabricKey(cloth.fabric);
    const heap = heaps.get(key) ?? { name: cloth.fabric, cloths: [] };
    heap.cloths.push(cloth);
    heaps.set(key, heap);
  }
  return [...heaps.values()];
}

/** One line a fabric: what is bought with the drawer used first, in place of what, and what is cut of it. */
function Covers({ covered, held }: { covered: Covered; held: readonly string[] }) {
  return (
    <ul class="covers">
      {covered.amounts.fabrics.map((amount) => {
        const { fabric } = amount;
        const before = state.amounts.value?.fabrics.find((one) => one.fabric === fabric);
        const [buy, was] = [amountText(amount), before === undefined ? "" : amountText(before)];
        const used = covered.used.filter((one) => one.fabric === fabric);
        const pieces = used.map(({ across, along, count }) =>
          words.cloth.drawerPiece(sizeSaid(across, along), count),
        );
        const line = !held.includes(fabricKey(fabric))
          ? words.cloth.drawerCovers.absent(fabric)
          : amount.length === null
            ? words.cloth.drawerCovers.all(fabric)
            : amount.length === before?.length
              ? words.cloth.drawerCovers.none(fabric, buy)
              : words.cloth.drawerCovers.part(fabric, buy, was);
        return (
          <li key={fabric}>
            {line}{" "}
            {pieces.length === 0 ? null : (
              <span class="quiet">{words.cloth.drawerUsed(pieces.join(", "))}</span>
            )}
          </li>
        );
      })}
    </ul>
  );
}

function PutIn() {
  const [fields, setFields] = useState({ fabric: "", size: "", count: "1" });
  const field = (what: "fabric" | "size" | "count", label: string, example: string, list?: string) => (
    <label>
      <span>{label}</span>
      <input
        value={fields[what]}
        placeholder={example}
        list={list}
        onInput={({ currentTarget }) => setFields({ ...fields, [what]: currentTarget.value })}
      />
    </label>
  );
  return (
    <form
      class="row fields"
      onSubmit={(event) => {
        event.preventDefault();
        if (putIn(fields.fabric, fields.size, fields.count)) setFields({ ...fields, size: "", count: "1" });
      }}
    >
      {field("fabric", words.cloth.drawerFabric, state.model.value.fabrics[0]?.name ?? "", "drawer-fabrics")}
      <datalist id="drawer-fabrics">
        {state.model.value.fabrics.map(({ name }) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      {field("size", words.cloth.drawerSize, words.cloth.drawerSizeExample)}
      {field("count", words.cloth.drawerCount, "1")}
      <button type="submit" class="label">
        {words.cloth.drawerAdd}
      </button>
    </form>
  );
}

/** The fabric there is already: a table as `stash` keeps it, laid out in heaps, and what it covers of this quilt. */
export function DrawerLeaf() {
  const cloths = clothsOf(drawerRead.value);
  const heaps = heapsOf(cloths);
  const own = heaps.filter(({ name }) => fabricNamed(name) !== null);
  const others = heaps.filter(({ name }) => fabricNamed(name) === null);
  const { asked, covered, failed } = state.cover.value;
  return (
    <section class="drawer" aria-labelledby="drawer-title">
      <h3 id="drawer-title">{words.cloth.drawer}</h3>
      {cloths.length > 0 ? null : <p class="quiet">{words.cloth.drawerEmpty}</p>}
      <ul class="byfabric">
        {own.map((heap) => (
          <Heap key={heap.name} {...heap} />
        ))}
      </ul>
      {others.length === 0 ? null : (
        <details class="notes">
          <summary>{`${words.cloth.drawerOther} (${others.length})`}</summary>
          <ul class="byfabric">
            {others.map((heap) => (
              <Heap key={heap.name} {...heap} />
            ))}
          </ul>
        </details>
      )}
      {own.length === 0 ? null : (
        <div class="row">
          <Label strong onClick={lookInDrawer}>
            {words.cloth.drawerAsk}
          </Label>
        </div>
      )}
      <div aria-live="polite">
        {!asked ? null : failed ? (
          <p class="alarm">{words.cloth.drawerCannot}</p>
        ) : covered === null ? (
          <p class="quiet">{words.cloth.drawerAsking}</p>
        ) : (
          <>
            <Covers covered={covered} held={heaps.map(({ name }) => fabricKey(name))} />
            <p class="quiet">
              {words.cloth.drawerHow}{" "}
              <code>{`crossgrain buy ${state.fileName.value || "quilt.yaml"} --stash ${state.drawer.value.name}`}</code>
            </p>
          </>
        )}
      </div>
      <PutIn />
      <div class="row">
        <Label onClick={() => void chooseDrawer()}>{words.cloth.openDrawer}</Label>
        {cloths.length === 0 ? null : (
          <Label onClick={() => void saveDrawer()}>{words.cloth.saveDrawer}</Label>
        )}
        {state.drawerBefore.value === null ? null : (
          <Label onClick={putBackDrawer}>{words.cloth.drawerBack}</Label>
        )}
      </div>
    </section>
  );
}
