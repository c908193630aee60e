import { type FabricPlan, leastBought, type Plan, pieceFacts, priceOf, totalPrice } from "../../planning.ts";
import { tongue } from "../words/index.ts";
import { NOTHING_YET } from "./complete.ts";

/** One size cut from a fabric: what it is, how many, and what for. */
interface WhyPiece {
  letter: string;
  count: number;
  size: string;
  uses: string[];
}

/** Strips of one width. */
interface WhyStrips {
  count: number;
  width: number;
  lengthwise: boolean;
}

/** What one fabric comes to. Lengths in ticks, money in hundredths. */
export interface Amount {
  fabric: string;
  colour: string;
  /** Length to ask for; null where nothing comes off a bolt. */
  length: number | null;
  unit: "in" | "yd" | "mm" | "cm" | "m";
  /** Smallest length the shop sells more of. */
  step: number;
  cost: number | null;
  price: string;
  /** Length that stays uncut of what is bought. */
  uncut: number;
  /** No smaller purchase is enough. */
  proven: boolean;
  pieces: WhyPiece[];
  strips: WhyStrips[];
  width: number;
}

export interface Amounts {
  fabrics: Amount[];
  /** Empty where a price is missing. */
  total: string;
}

function strips({ steps }: FabricPlan): WhyStrips[] {
  const all: WhyStrips[] = [];
  for (const { kind, count, width } of steps) {
    if (kind === "straighten") continue;
    const lengthwise = kind === "bands";
    const same = all.find((one) => one.width === width && one.lengthwise === lengthwise);
    if (same === undefined) all.push({ count, width, lengthwise });
    else same.count += count;
  }
  return all;
}

/** What to buy of each fabric of a plan, and why. The stand-in for what is not drawn yet is left out. */
export function amountsOf(plan: Plan): Amounts {
  const whole = plan.fabrics.every(({ name }) => name !== NOTHING_YET);
  return {
    fabrics: plan.fabrics
      .filter(({ name }) => name !== NOTHING_YET)
      .map((fabric): Amount => {
        const { name, colour, purchase, sold, sturdiness, mix, width } = fabric;
        return {
          fabric: name,
          colour,
          length: purchase?.length ?? null,
          unit: sold.unit,
          step: sold.step,
          cost: mix?.cost ?? purchase?.cost ?? null,
          price: priceOf(fabric, plan),
          uncut: sturdiness.spareLength,
          proven: leastBought(fabric),
          pieces: pieceFacts(fabric, plan, tongue).map(({ letter, count, size, uses }) => ({
            letter,
            count,
            size,
            uses,
          })),
          strips: strips(fabric),
          width,
        };
      }),
    total: whole ? (totalPrice(plan) ?? "") : "",
  };
}
