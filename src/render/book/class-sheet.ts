import type { Kits } from "../../choices/kits.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { alsoNeeded, pieceFacts } from "../text/index.ts";
import { money } from "../text/money.ts";
import { unitGroups } from "../text/unit-groups.ts";
import { toldGroup } from "../text/unit-told.ts";
import type { Block, Book, Cell, Section, Step, StepGroup, Table } from "./content.ts";
import { coverOf } from "./cover.ts";
import { sentence, typeset } from "./typeset.ts";

/** Kinds of units that are taught in one session. */
const UNITS_A_SESSION = 3;

const cell = (text: string): Cell => ({ text, notes: [], swatch: null });

function section(id: string, title: string, blocks: Block[]): Section {
  return { id, over: "", title, swatch: null, newSheet: false, blocks };
}

/** What all kits cost together, in hundredths, where every fabric has a price in one currency; else null. */
function priceOf({ fabrics }: Kits, of: "together" | "one"): number | null {
  const costs = fabrics.map((fabric) => (fabric[of] === null ? 0 : fabric[of].cost));
  const currencies = new Set(fabrics.map(({ currency }) => currency));
  if (currencies.size !== 1 || costs.some((cost) => cost === null)) return null;
  const sum = costs.reduce<number>((total, cost) => total + (cost ?? 0), 0);
  return sum === 0 ? null : sum;
}

function kitsTable(kits: Kits, words: Words): Table {
  const { columns, separate, none } = words.choices.kits;
  const priced = priceOf(kits, "together") !== null;
  const { caption, perKit, total } = words.teaching.kits;
  const rows = kits.fabrics.map(({ fabric, together, one, separately, currency }): Cell[] => [
    { ...cell(fabric), swatch: kits.batch.fabrics.find(({ name }) => name === fabric)?.colour ?? null },
    cell(typeset(together?.text ?? none)),
    cell(typeset(one?.text ?? none)),
    cell(typeset(separately?.text ?? none)),
    ...(priced
      ? [cell(money(together?.cost ?? 0, currency)), cell(money((together?.cost ?? 0) / kits.kits, currency))]
      : []),
  ]);
  const [{ currency } = { currency: "" }] = kits.fabrics;
  const whole = priceOf(kits, "together") ?? 0;
  const sum = [
    cell(total),
    cell(""),
    cell(""),
    cell(""),
    cell(money(whole, currency)),
    cell(money(whole / kits.kits, currency)),
  ];
  const headings = [columns.fabric, columns.together, columns.one, separate(kits.kits)];
  if (priced) headings.push(columns.costTogether, perKit);
  return {
    caption,
    captionSeen: false,
    columns: headings.map((heading, c) => ({
      heading: sentence(heading),
      align: c === 0 ? "left" : "right",
    })),
    rows: priced ? [...rows, sum] : rows,
    summed: priced,
    ticks: [],
  };
}

function bagLines({ fabrics }: Plan, plan: Plan, words: Words): string[] {
  return fabrics.map((fabric) => {
    const bags = pieceFacts(fabric, plan, words).map(({ letter, count, size }) =>
      words.teaching.kits.bag(letter, count, typeset(size)),
    );
    return `${fabric.name}: ${bags.join("; ")}`;
  });
}

/** What is shown, done and taken home in a session. */
interface Session {
  title: (number: number) => string;
  show: string;
  inClass: string;
  homework: string;
}

function sessionsOf(plan: Plan, words: Words): Session[] {
  const { making, top } = plan;
  if (making === undefined || top === null) return [];
  const said = words.teaching.session;
  const units = unitGroups(plan, words).flatMap((group) => {
    const told = toldGroup(group, plan, words);
    return told === null
      ? []
      : [{ name: group.units.map(({ name }) => name).join("/"), title: typeset(told.title) }];
  });
  const taught = Array.from({ length: Math.ceil(units.length / UNITS_A_SESSION) }, (_, i) =>
    units.slice(i * UNITS_A_SESSION, (i + 1) * UNITS_A_SESSION),
  );
  const blocks = top.designs.filter(({ count, units: own }) => count > 0 && own.length > 1);
  const borders = making.borders.length > 0;
  return [
    ...taught.map((some) => ({
      title: said.units,
      show: said.showUnits(some.map(({ name }) => name)),
      inClass: said.makeUnits(some.map(({ name }) => name)),
      homework: said.restUnits(some.map(({ title }) => title)),
    })),
    ...(blocks.length === 0
      ? []
      : [
          {
            title: said.blocks,
            show: said.showBlocks,
            inClass: said.makeBlocks,
            homework: said.restBlocks(
              blocks.map(({ name, colourway, count }) =>
                said.block(colourway === "" ? name : `${name}, ${colourway}`, count),
              ),
            ),
          },
        ]),
    {
      title: (number) => said.top(number, borders),
      show: said.showTop,
      inClass: said.makeTop,
      homework: said.restTop(borders),
    },
    { title: said.finish, show: said.showFinish, inClass: said.makeFinish, homework: said.restFinish },
  ];
}

function groupOf({ title, show, inClass, homework }: Session, number: number, words: Words): StepGroup {
  const said = words.teaching.session;
  const lines = [
    [said.show, show],
    [said.inClass, inClass],
    [said.homework, homework],
  ] as const;
  return {
    title: title(number),
    steps: lines.map(
      ([what, text], i): Step => ({
        id: `session-${number}-${i + 1}`,
        title: `${what}: ${text}`,
        light: true,
        details: [],
        parts: [],
        where: "",
        warnings: [],
      }),
    ),
  };
}

/** One sheet for whoever teaches: what to buy for the kits and what each costs, what pupils bring, and the sessions. */
export function classSheet(kits: Kits, words: Words): Book {
  const { single } = kits;
  const { teaching } = words;
  const { currency = "" } = kits.fabrics[0] ?? {};
  const sessions = sessionsOf(single, words);
  const [together, alone] = [priceOf(kits, "together"), priceOf(kits, "one")];
  const facts = [
    { caption: teaching.facts.kits, value: String(kits.kits) },
    ...(sessions.length === 0 ? [] : [{ caption: teaching.facts.sessions, value: String(sessions.length) }]),
    ...(together === null
      ? []
      : [{ caption: teaching.facts.costKit, value: money(together / kits.kits, currency) }]),
    ...(alone === null ? [] : [{ caption: teaching.facts.costAlone, value: money(alone, currency) }]),
  ];
  const { scene } = coverOf(single, words);
  return {
    purpose: "bench",
    title: teaching.title(single.name, kits.kits),
    subtitle: teaching.subtitle,
    cover: { scene, facts },
    sections: [
      section("kits", teaching.kits.title, [
        { kind: "text", text: teaching.kits.lead, tone: "lead" },
        { kind: "table", table: kitsTable(kits, words) },
        { kind: "heading", text: teaching.kits.bags },
        { kind: "list", items: bagLines(single, single, words) },
      ]),
      section("bring", teaching.bring.title, [
        {
          kind: "list",
          items: [...alsoNeeded(single, words).map(typeset), ...teaching.bring.items],
          columns: 2,
        },
      ]),
      ...(sessions.length === 0
        ? []
        : [
            section("sessions", teaching.session.title, [
              { kind: "text", text: teaching.session.lead, tone: "lead" },
              {
                kind: "steps",
                columns: 2,
                groups: sessions.map((session, i) => groupOf(session, i + 1, words)),
              },
            ]),
          ]),
    ],
    key: `class-${kits.kits}`,
  };
}
