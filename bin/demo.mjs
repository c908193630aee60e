// Plans the demo cut lists, as a maker would from the shell, into out/ or the folder named.
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

const into = process.argv[2] === undefined ? "out" : resolve(process.argv[2]);
process.chdir(fileURLToPath(new URL("..", import.meta.url)));
const { main, processIo } = await import("../.build/main.js");

const DEMOS = [
  ["harbour-lights", "harbour-lights"],
  ["winter-orchard-metric", "winter-orchard"],
];
// Long enough for every search to end, so that a busy machine writes the same plans.
const SECONDS = "20";
const io = processIo();
for (const [file, folder] of DEMOS) {
  const words = ["plan", `fixtures/cutlists/${file}.yaml`, "--out", join(into, folder), "--budget", SECONDS];
  const code = await main(words, io);
  if (code !== 0) process.exit(code);
}
