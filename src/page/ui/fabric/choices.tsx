import { useEffect, useRef } from "preact/hooks";
import type { Chosen, ChosenWay } from "../../planner/choosing.ts";
import { tongue, words } from "../../words/index.ts";
import { lookForWays } from "../actions.ts";
import { QuiltPicture } from "../quilt-picture.tsx";
import * as state from "../state.ts";
import { Label } from "../steps.tsx";
import { unitSaid } from "../unit-said.ts";
import { JustTaken, useTaking } from "./taking.tsx";

const buysSaid = (buys: readonly string[]): string => (buys.length === 0 ? words.sameBuy : buys.join(", "));

function Row({ way, label }: { way: ChosenWay; label: string }) {
  const columns = words.wayColumns;
  const { button, asked } = useTaking(label, way.text, "choices");
  return (
    <>
      <tr class={way.now ? "open" : ""}>
        <th scope="row">
          {label}
          {way.now ? <span class="quiet"> {words.asNow}</span> : null}
        </th>
        {way.why !== "" ? (
          <td colSpan={5} class="quiet">
            {way.why}
          </td>
        ) : (
          <>
            <td data-of={columns.buy}>{buysSaid(way.buys)}</td>
            <td data-of={columns.cuts}>{way.cuts}</td>
            <td data-of={columns.seams}>{way.seams}</td>
            <td data-of={columns.bias}>{way.bias}</td>
            <td data-of={columns.minutes}>{way.minutes}</td>
          </>
        )}
        <td>{way.now || way.why !== "" ? null : button}</td>
      </tr>
      {asked === null ? null : (
        <tr>
          <td colSpan={7}>{asked}</td>
        </tr>
      )}
    </>
  );
}

function Ways({ chosen }: { chosen: Chosen & { what: "ways" } }) {
  const columns = words.wayColumns;
  const { units, best } = chosen;
  return (
    <div class="tablebox" tabIndex={0} role="region" aria-label={words.waysAsk}>
      <table class="waytable">
        <thead>
          <tr>
            <th scope="col">{columns.way}</th>
            <th scope="col">{columns.buy}</th>
            <th scope="col">{columns.cuts}</th>
            <th scope="col">{columns.seams}</th>
            <th scope="col">{columns.bias}</th>
            <th scope="col">{columns.minutes}</th>
            <td />
          </tr>
        </thead>
        {units.map(({ unit, count, ways }) => (
          <tbody key={unit} data-unit={unit}>
            <tr>
              <th colSpan={7} scope="colgroup">
                {words.unitKind(unitSaid(unit), count)}
              </th>
            </tr>
            {ways.map((way) => (
              <Row key={way.name} way={way} label={way.name} />
            ))}
          </tbody>
        ))}
        {best === null || best.now ? null : (
          <tbody>
            <tr>
              <th colSpan={7} scope="colgroup">
                {words.bestWay} {best.proven ? <span class="quiet">{words.states.proven}</span> : null}
              </th>
            </tr>
            <Row way={best} label={best.name} />
          </tbody>
        )}
      </table>
    </div>
  );
}

type Turning = Extract<Chosen, { what: "turnings" }>["turnings"][number];

function TurningCard({ turning, at }: { turning: Turning; at: number }) {
  const { name, now, text, picture, buys, nested, places, why } = turning;
  const { button, asked } = useTaking(name, text, "choices");
  return (
    <li class={now ? "held" : ""}>
      {picture === null ? null : (
        <QuiltPicture top={picture} model={state.model.value} prefix={`turn${at}-`} label={name} />
      )}
      <b>{name}</b>
      {why === "" ? (
        <>
          <span class="quiet">{buysSaid(buys)}</span>
          {places === 0 ? null : (
            <span class="quiet">
              {words.wayColumns.nest}: {words.nests(nested, places)}
            </span>
          )}
        </>
      ) : (
        <span class="quiet">{why}</span>
      )}
      {now ? <span class="quiet">{words.asNow}</span> : why !== "" ? null : button}
      {asked}
    </li>
  );
}

function Turnings({ chosen }: { chosen: Chosen & { what: "turnings" } }) {
  return (
    <ul class="turnings">
      {chosen.turnings.map((turning, i) => (
        <TurningCard key={turning.name} turning={turning} at={i} />
      ))}
    </ul>
  );
}

/** Brings the ways of one unit to the hand that asked for them where it is sewn: once they are there, and before. */
function useWaysOfUnit(): { current: HTMLDivElement | null } {
  const box = useRef<HTMLDivElement>(null);
  const unit = state.waysOf.value;
  const there = state.choosing.value?.chosen ?? null;
  useEffect(() => {
    const place = box.current;
    if (unit === "" || place === null) return;
    const own = [...place.querySelectorAll<HTMLElement>("[data-unit]")].find(
      (one) => one.getAttribute("data-unit") === unit,
    );
    (own ?? place).scrollIntoView({ block: own === undefined ? "start" : "center" });
    own?.querySelector("button")?.focus({ preventScroll: true });
  }, [unit, there]);
  return box;
}

/** Ways of making and turnings, each planned on the whole quilt and taken with a tap. */
export function Choices() {
  const now = state.choosing.value;
  const chosen = now?.chosen ?? null;
  const none =
    chosen !== null && (chosen.what === "ways" ? chosen.units.length === 0 : chosen.turnings.length < 2);
  const box = useWaysOfUnit();
  const unit = state.waysOf.value;
  return (
    <div ref={box}>
      <h3>{words.choicesTitle}</h3>
      {unit === "" ? null : (
        <button type="button" class="act" onClick={() => (state.region.value = "sew")}>
          {words.backToSewing(tongue.unitNames.unit(unit))}
        </button>
      )}
      <div class="row">
        <Label pressed={now?.what === "ways"} onClick={() => lookForWays("ways")}>
          {words.waysAsk}
        </Label>
        <Label pressed={now?.what === "turnings"} onClick={() => lookForWays("turnings")}>
          {words.turningsAsk}
        </Label>
      </div>
      {now === null ? <JustTaken where="choices" /> : null}
      {now !== null && chosen === null ? (
        <p class="quiet" role="status">
          {words.choosing(now.done, now.of)}
        </p>
      ) : null}
      {none ? <p class="quiet">{words.noWays}</p> : null}
      {chosen === null || none ? null : chosen.what === "ways" ? (
        <Ways chosen={chosen} />
      ) : (
        <Turnings chosen={chosen} />
      )}
    </div>
  );
}
