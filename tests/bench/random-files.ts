import { Dice } from "../engine/exact/random-problems.ts";

const PRINTS = ["none", "none", "none", "two-way", "one-way along", "one-way across"];

/**
 * The random cut-list file of a seed, as a maker would write it: inches in eighths or centimetres in
 * quarters, one to four fabrics, now and then with borders cut lengthwise, joins, or a piece too big.
 */
export function randomFile(seed: number): string {
  const dice = new Dice(Math.imul(seed, 2246822519));
  const inches = dice.chance(2, 3);
  const length = (low: number, high: number): string =>
    inches ? eighths(dice.between(low, high)) : quarters(dice.between(low * 2, high * 2));
  const lines = [
    `name: Random ${seed}`,
    `units: ${inches ? "in" : "cm"}`,
    `ruler: ${inches ? "1/8 in" : "0.25 cm"}`,
    "fabrics:",
  ];
  const fabrics = dice.between(1, 4);
  for (let fabric = 1; fabric <= fabrics; fabric++) {
    lines.push(`  - name: Fabric ${fabric}`, `    width: ${inches ? "44 in" : "112 cm"}`);
    lines.push(`    print: ${PRINTS[dice.between(0, PRINTS.length - 1)]}`);
    if (dice.chance(1, 3)) lines.push(`    shrinkage: ${dice.between(1, 6)}%`);
    if (dice.chance(1, 4)) lines.push(`    spare: ${length(1, 24)}`);
    const priced = dice.chance(1, 3);
    if (priced) lines.push(`    price: ${dice.between(5, 25)}.50 per ${inches ? "yd" : "m"}`);
    if (dice.chance(1, 4))
      lines.push("    have:", `      - ${randomCloth(dice, length)}, ${dice.between(1, 4)}`);
    if (priced && dice.chance(1, 4)) {
      const price = `${dice.between(1, 5)}.${dice.between(10, 99)}`;
      lines.push(
        "    ready-cut:",
        `      - ${randomCloth(dice, length)}, ${price}, at most ${dice.between(1, 2)}`,
      );
    }
    lines.push("    pieces:", ...randomPieces(dice, length).map((piece) => `      - ${piece}`));
  }
  return `${lines.join("\n")}\n`;
}

/** Fat quarters, precut squares and strips, pieces of any size. */
function randomCloth(dice: Dice, length: (low: number, high: number) => string): string {
  const kind = dice.between(0, 3);
  if (kind === 0) return "fat quarter";
  if (kind === 1) return `${length(40, 90)} squares`;
  if (kind === 2) return `${length(10, 40)} strips`;
  return `${length(40, 200)} x ${length(40, 200)}`;
}

function randomPieces(dice: Dice, length: (low: number, high: number) => string): string[] {
  const sizes = dice.between(1, 5);
  const pieces: string[] = [];
  for (let size = 1; size <= sizes; size++) {
    const first = length(10, 70);
    const shape = dice.chance(1, 2) ? `${first} square` : `${first} x ${length(8, 110)}`;
    const turn = dice.chance(1, 6) ? ", turn fixed" : "";
    pieces.push(`piece ${size} ${shape}, ${dice.between(1, 90)}${turn}`);
  }
  if (dice.chance(1, 3)) pieces.push(`binding ${length(16, 22)} x WOF, ${dice.between(2, 9)}`);
  if (dice.chance(1, 5)) {
    const how = ["cut lengthwise", "cut either", "join straight", "join diagonal"][dice.between(0, 3)];
    pieces.push(`border ${length(16, 60)} x ${length(250, 700)}, ${dice.between(2, 4)}, ${how}`);
  }
  if (dice.chance(1, 25)) pieces.push(`panel ${length(360, 420)} x ${length(360, 420)}, 1`);
  return pieces;
}

function eighths(count: number): string {
  const whole = Math.floor(count / 8);
  const rest = count % 8;
  const divisor = rest % 4 === 0 ? 4 : rest % 2 === 0 ? 2 : 1;
  const fraction = rest === 0 ? "" : `${rest / divisor}/${8 / divisor}`;
  return [whole === 0 ? "" : String(whole), fraction].filter((word) => word !== "").join(" ") || "0";
}

function quarters(count: number): string {
  return String(count / 4);
}
