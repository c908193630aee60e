// Plans the demo cut lists and the demo quilt, as a maker would from the shell, into out/ or the folder named.
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

const into = process.argv[2] === undefined ? "out" : resolve(process.argv[2]);
process.chdir(fileURLToPath(new URL("..", import.meta.url)));
const { main, processIo } = await import("../.build/main.js");

const DEMOS = [
  ["cutlists/harbour-lights", "harbour-lights"],
  ["cutlists/winter-orchard-metric", "winter-orchard"],
  ["quilts/allotments", "allotments"],
];
const io = processIo();
const page = join(into, "crossgrain.html");
for (const [file, folder] of DEMOS) {
  const words = ["plan", `fixtures/${file}.yaml`, "--out", join(into, folder)];
  const code = await main(words, io);
  if (code !== 0) process.exit(code);
}
const code = await main(["page", "--out", page], { ...io, talk: () => {} });
if (code !== 0) process.exit(code);
io.talk(`To draw a quilt yourself, open ${page} with a double click.\n`);
