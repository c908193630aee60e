// Plans the demo cut lists and the demo quilt, as a maker would from the shell, into out/ or the folder named.
// Files there that were changed by hand or merged are refused by name; --replace writes over them.
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

const given = process.argv.slice(2);
const [named] = given.filter((word) => word !== "--replace");
const into = named === undefined ? "out" : resolve(named);
const replace = given.includes("--replace") ? ["--replace"] : [];
process.chdir(fileURLToPath(new URL("..", import.meta.url)));
const { english, main, processIo } = await import("../.build/main.js");

const DEMOS = [
  ["cutlists/harbour-lights", "harbour-lights"],
  ["cutlists/winter-orchard-metric", "winter-orchard"],
  ["quilts/allotments", "allotments"],
];
const io = processIo(english);
const page = join(into, "crossgrain.html");
for (const [file, folder] of DEMOS) {
  const words = ["plan", `fixtures/${file}.yaml`, "--out", join(into, folder), ...replace];
  const code = await main(words, io);
  if (code !== 0) process.exit(code);
}
const code = await main(["page", "--out", page], { ...io, talk: () => {} });
if (code !== 0) process.exit(code);
io.talk(`To draw a quilt yourself, open ${page} with a double click.\n`);
