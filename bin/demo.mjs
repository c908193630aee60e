// Plans the demo cut lists into out/, as a maker would from the shell.
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const DEMOS = [
  ["fixtures/cutlists/harbour-lights.yaml", "out/harbour-lights"],
  ["fixtures/cutlists/winter-orchard-metric.yaml", "out/winter-orchard"],
];

process.chdir(root);
const { main, processIo } = await import("../.build/main.js");
const io = processIo();
for (const [file, folder] of DEMOS) {
  const code = await main(["plan", file, "--out", folder], io);
  if (code !== 0) process.exit(code);
}
