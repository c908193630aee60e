import type { Kits } from "../../choices/kits/kits.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { kitPrices, sortName } from "../buying/kits.ts";
import { money } from "../buying/money.ts";
import { alsoNeeded, pieceFacts } from "../index.ts";
import { forMakers } from "../sewing/for-makers.ts";
import { unitGroups } from "../sewing/unit-groups.ts";
import { toldGroup } from "../sewing/unit-told.ts";
import type { Block, Book, Cell, Section, Step, StepGroup, Table } from "./content.ts";
import { coverOf } from "./parts/cover.ts";
import { sentence, typeset } from "./typeset.ts";

/** Kinds of units that are taught in one session. */
const UNITS_A_SESSION = 3;

const cell = (text: string): Cell => ({ text, notes: [], swatch: null });

function section(id: string, title: string, blocks: Block[]): Section {
  return { id, over: "", title, swatch: null, newSheet: false, blocks };
}

/** What all kits cost together, in hundredths, where every fabric has a price in one currency; else null. */
function priceOf({ fabrics }: Kits): number | null {
  const costs = fabrics.map(({ together, cost }) => (together === null && cost === null ? 0 : cost));
  const currencies = new Set(fabrics.map(({ currency }) => currency));
  if (currencies.size !== 1 || costs.some((cost) => cost === null)) return null;
  const sum = costs.reduce<number>((total, cost) => total + (cost ?? 0), 0);
  return sum === 0 ? null : sum;
}

function kitsTable(kits: Kits, words: Words): Table {
  const { columns, separate, none } = words.choices.kits;
  const { ruler } = kits.batch;
  const whole = priceOf(kits);
  const priced = whole !== null;
  const { caption, perKit, total, forOne } = words.teaching.kits;
  const several = kits.sorts.length > 1;
  const prices = kitPrices(kits);
  const rows = kits.fabrics.map(({ fabric, together, cost, each, separately, currency }): Cell[] => [
    { ...cell(fabric), swatch: kits.batch.fabrics.find(({ name }) => name === fabric)?.colour ?? null },
    cell(typeset(together?.text ?? none)),
    ...(several ? [] : [cell(typeset(each[0]?.alone?.text ?? none))]),
    cell(typeset(separately?.text ?? none)),
    ...(priced
      ? [cost, ...each.map(({ share }) => share)].map((amount) =>
          cell(amount === null || amount === 0 ? none : money(amount, currency, ruler)),
        )
      : []),
  ]);
  const [{ currency } = { currency: "" }] = kits.fabrics;
  const sum = [
    ...[total, "", "", ...(several ? [] : [""])].map(cell),
    ...[whole, ...prices.map(({ share }) => share)].map((amount) =>
      cell(money(amount ?? 0, currency, ruler)),
    ),
  ];
  const headings = [columns.fabric, columns.together, ...(several ? [] : [columns.one]), separate(kits.kits)];
  if (priced)
    headings.push(columns.costTogether, ...(several ? prices.map((_, i) => forOne(i + 1)) : [perKit]));
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

/** The sorts of kits, how many of each, and what one costs. */
function sortsTable(kits: Kits, words: Words): Table {
  const { sortColumns } = words.choices.kits;
  const { ruler } = kits.batch;
  const [{ currency } = { currency: "" }] = kits.fabrics;
  const prices = kitPrices(kits);
  const priced = prices.every(({ share }) => share !== null);
  const headings = [
    sortColumns.kit,
    sortColumns.count,
    ...(priced ? [sortColumns.share, sortColumns.alone] : []),
  ];
  return {
    caption: words.teaching.kits.sortCaption,
    captionSeen: false,
    columns: headings.map((heading, c) => ({
      heading: sentence(heading),
      align: c === 0 ? "left" : "right",
    })),
    rows: kits.sorts.map((one, i) => [
      cell(typeset(sortName(one, i, words))),
      cell(String(one.kits)),
      ...(priced
        ? [prices[i]?.share, prices[i]?.alone].map((amount) => cell(money(amount ?? 0, currency, ruler)))
        : []),
    ]),
    summed: false,
    ticks: [],
  };
}

function bagLines(plan: Plan, words: Words): string[] {
  return plan.fabrics.map((fabric) => {
    const bags = pieceFacts(fabric, plan, words).map(({ letter, count, size }) =>
      words.teaching.kits.bag(letter, count, typeset(size)),
    );
    return `${fabric.name}: ${bags.join("; ")}`;
  });
}

/** Lines that all sorts of kits have, and then what is said of each alone. */
function bySort(lines: readonly (readonly string[])[], words: Words): string[] {
  const [first = [], ...others] = lines;
  const shared = first.filter((line) => others.every((other) => other.includes(line)));
  return [
    ...shared,
    ...lines.flatMap((own, i) =>
      own.filter((line) => !shared.includes(line)).map((line) => words.teaching.session.ofSort(i + 1, line)),
    ),
  ];
}

/** What is shown, done and taken home in a session. */
interface Session {
  title: (number: number) => string;
  show: string;
  inClass: string;
  /** A line for each sort of kit where they differ. */
  homework: string[];
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
      homework: [said.restUnits(some.map(({ title }) => title))],
    })),
    ...(blocks.length === 0
      ? []
      : [
          {
            title: said.blocks,
            show: said.showBlocks,
            inClass: said.makeBlocks,
            homework: [
              said.restBlocks(
                blocks.map(({ name, colourway, count }) =>
                  said.block(colourway === "" ? name : `${name}, ${colourway}`, count),
                ),
              ),
            ],
          },
        ]),
    {
      title: (number) => said.top(number, borders),
      show: said.showTop,
      inClass: said.makeTop,
      homework: [said.restTop(borders)],
    },
    { title: said.finish, show: said.showFinish, inClass: said.makeFinish, homework: [said.restFinish] },
  ];
}

function groupOf({ title, show, inClass, homework }: Session, number: number, words: Words): StepGroup {
  const said = words.teaching.session;
  const lines = [
    [said.show, [show]],
    [said.inClass, [inClass]],
    [said.homework, homework],
  ] as const;
  return {
    title: title(number),
    steps: lines.map(
      ([what, all], i): Step => ({
        id: `session-${number}-${i + 1}`,
        title: all.length === 1 ? `${what}: ${all[0]}` : `${what}:`,
        light: true,
        details: all.length === 1 ? [] : [...all],
        parts: [],
        where: "",
        warnings: [],
      }),
    ),
  };
}

/** The sessions of a class: what is left for home is told for each sort of kit where it differs. */
function sessionsOfClass({ sorts }: Kits, words: Words): Session[] {
  const own = sorts.map(({ dealt }) => sessionsOf(dealt, words));
  const most = own.reduce((longest, each) => (each.length > longest.length ? each : longest), own[0] ?? []);
  return most.map((session, at) => {
    return {
      ...session,
      homework: bySort(
        own.map((sessions) => sessions[at]?.homework ?? []),
        words,
      ),
    };
  });
}

/** How many kits and sessions, and what a kit costs where all are of one sort. */
function classFacts(kits: Kits, sessions: number, { teaching }: Words): { caption: string; value: string }[] {
  const several = kits.sorts.length > 1;
  const { currency = "" } = kits.fabrics[0] ?? {};
  const together = priceOf(kits);
  const [{ alone } = { alone: null }] = kitPrices(kits);
  const price = (caption: string, hundredths: number | null) =>
    hundredths === null || several ? [] : [{ caption, value: money(hundredths, currency, kits.batch.ruler) }];
  return [
    { caption: teaching.facts.kits, value: String(kits.kits) },
    ...(sessions === 0 ? [] : [{ caption: teaching.facts.sessions, value: String(sessions) }]),
    ...price(teaching.facts.costKit, together === null ? null : together / kits.kits),
    ...price(teaching.facts.costAlone, alone),
  ];
}

/** What to buy for all kits, and what goes into the bags of each. */
function kitBlocks(kits: Kits, words: Words): Block[] {
  const { sorts } = kits;
  const several = sorts.length > 1;
  const { teaching } = words;
  return [
    { kind: "text", text: several ? teaching.kits.leadSorts : teaching.kits.lead, tone: "lead" },
    ...(several ? [{ kind: "table" as const, table: sortsTable(kits, words) }] : []),
    { kind: "table", table: kitsTable(kits, words) },
    ...(several
      ? [{ kind: "text" as const, text: words.choices.kits.shareRule, tone: "quiet" as const }]
      : []),
    ...sorts.flatMap((one, i): Block[] => [
      {
        kind: "heading",
        text: several ? typeset(teaching.kits.bagsOf(sortName(one, i, words), one.kits)) : teaching.kits.bags,
      },
      { kind: "list", items: bagLines(one.dealt, words) },
    ]),
  ];
}

/** One sheet for whoever teaches: what to buy for the kits and what each costs, what pupils bring, and the sessions. */
export function classSheet(kits: Kits, ours: Words): Book {
  const words = forMakers(ours);
  const { sorts } = kits;
  const [first] = sorts;
  if (first === undefined) throw new Error("a class without kits");
  const { teaching } = words;
  const sessions = sessionsOfClass(kits, words);
  const { scene } = coverOf(first.single, words);
  const also = sorts.map(({ single }) => alsoNeeded(single, words).map(typeset));
  return {
    purpose: "bench",
    title: teaching.title(first.single.name, kits.kits),
    subtitle: teaching.subtitle,
    cover: { scene, facts: classFacts(kits, sessions.length, words) },
    sections: [
      section("kits", teaching.kits.title, kitBlocks(kits, words)),
      section("bring", teaching.bring.title, [
        {
          kind: "list",
          items: [...bySort(also, words), ...teaching.bring.items],
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
