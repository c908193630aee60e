import { classOfText, type KitWish, removeKits, setKits, setSwap } from "../../../edits/class-edits.ts";
import { readSizes, readSpecFile } from "../../../planning.ts";
import { words } from "../../words/index.ts";
import { edit, planKits } from "../actions.ts";
import { Field } from "../field.tsx";
import * as state from "../state.ts";
import { countTyped, Label, Stepper } from "../steps.tsx";

const MOST = 200;

/** Whether a size is one that `further sizes` takes too: `3x3`, `lap`. */
function isSize(size: string): boolean {
  if (size === "") return true;
  const spec = readSpecFile(state.text.value, "").value;
  return spec === null || readSizes(`${size};`, spec.ruler).value?.length === 1;
}

/** How large; what is no size is said, and the field is as it was. */
function Size({ kit, take }: { kit: KitWish; take(next: KitWish): void }) {
  return (
    <label>
      <span>{words.kits.size}</span>
      <Field
        value={kit.size}
        placeholder={words.kits.asDrawn}
        size={9}
        onChange={({ currentTarget }) => {
          const size = currentTarget.value.trim();
          if (size === kit.size) return;
          if (isSize(size)) take({ ...kit, size });
          else {
            currentTarget.value = kit.size;
            state.said.value = words.kits.wrongSize(size);
          }
        }}
      />
    </label>
  );
}

/** How many, how large, in which colours; each change is one of the text. */
function Kits({ kit, at }: { kit: KitWish; at: number }) {
  const { colourways } = classOfText(state.text.value);
  const named = words.kits.line(at + 1);
  const take = (next: KitWish) =>
    edit((text) => setKits(text, at, next), words.kits.said(at + 1, next.count));
  const many = (count: number) => {
    if (count >= 1 && count <= MOST) take({ ...kit, count });
  };
  return (
    <li>
      <Stepper
        what={words.kits.count(at + 1)}
        value={words.kits.many(kit.count)}
        typed={{
          now: String(kit.count),
          take: (wish) => {
            const count = countTyped(wish, MOST);
            if (count !== null) many(count);
          },
        }}
        less={() => many(kit.count - 1)}
        more={() => many(kit.count + 1)}
      />
      <Size kit={kit} take={take} />
      {colourways.length === 0 ? null : (
        <label>
          <span>{words.kits.colours}</span>
          <select
            value={kit.colourway}
            onChange={({ currentTarget }) => take({ ...kit, colourway: currentTarget.value })}
          >
            <option value="">{words.kits.ownColours}</option>
            {colourways.map(({ name }) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
      <button
        type="button"
        class="act"
        aria-label={`${words.takeAway}: ${named}`}
        onClick={() => edit((text) => removeKits(text, at), words.kits.away(named))}
      >
        {words.takeAway}
      </button>
    </li>
  );
}

/** Colourways of the whole quilt: which fabric stands for which. */
function Colourways() {
  const { colourways } = classOfText(state.text.value);
  const fabrics = state.model.value.fabrics.map(({ name }) => name);
  const [first, second] = fabrics;
  return (
    <details class="notes">
      <summary>{words.kits.colourways}</summary>
      {colourways.map(({ name, swaps }) => (
        <div key={name} class="row fields" role="group" aria-label={name}>
          <b>{name}</b>
          {fabrics.map((from) => (
            <label key={from}>
              <span>{words.kits.insteadOf(from)}</span>
              <select
                value={swaps.find((swap) => swap.from === from)?.to ?? from}
                onChange={({ currentTarget }) => {
                  const to = currentTarget.value;
                  edit((text) => setSwap(text, name, from, to), words.kits.swapped(name, from, to));
                  // The last swap of a colourway stays: without one it would be the quilt as it is.
                  currentTarget.value =
                    classOfText(state.text.value)
                      .colourways.find((one) => one.name === name)
                      ?.swaps.find((swap) => swap.from === from)?.to ?? from;
                }}
              >
                {fabrics.map((to) => (
                  <option key={to} value={to}>
                    {to}
                  </option>
                ))}
              </select>
            </label>
          ))}
        </div>
      ))}
      {first === undefined || second === undefined ? (
        <p class="quiet">{words.kits.oneFabric}</p>
      ) : (
        <Label
          onClick={() => {
            const name = words.kits.colourwayNamed(colourways.length + 1);
            edit((text) => setSwap(text, name, first, second), words.kits.swapped(name, first, second));
          }}
        >
          {words.kits.anotherColourway}
        </Label>
      )}
    </details>
  );
}

/** The kits of a class: said here, planned together, their papers looked at below. */
export function ClassHand() {
  const { kits } = classOfText(state.text.value);
  const { asked, made } = state.kits.value;
  const next: KitWish = { count: kits.length === 0 ? 6 : 1, size: "", colourway: "" };
  return (
    <details class="notes" open={kits.length > 0}>
      <summary>{words.kits.title}</summary>
      <ul class="kitlines">
        {kits.map(({ line, kit }, i) =>
          kit === null ? (
            <li key={i} class="alarm">
              {words.kits.unread(line)}
            </li>
          ) : (
            <Kits key={i} kit={kit} at={i} />
          ),
        )}
      </ul>
      <div class="row">
        <Label
          onClick={() =>
            edit((text) => setKits(text, kits.length, next), words.kits.said(kits.length + 1, next.count))
          }
        >
          {kits.length === 0 ? words.kits.begin : words.kits.another}
        </Label>
        {kits.length === 0 ? null : (
          <Label strong onClick={planKits}>
            {words.kits.plan}
          </Label>
        )}
      </div>
      {kits.length === 0 ? <p class="quiet">{words.kits.help}</p> : <Colourways />}
      <p class={made !== null && made.problem !== "" ? "alarm" : "quiet"} role="status">
        {!asked
          ? ""
          : made === null
            ? words.kits.planning
            : made.problem === ""
              ? words.kits.planned(made.kits, made.sorts)
              : made.problem}
      </p>
    </details>
  );
}
