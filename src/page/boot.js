// Unpacks the program, which serves the page and its workers alike, and starts it.
(async () => {
  // Thirteen bits stand in two letters, up to six in one at the end: see `src/cli/in-letters.ts`.
  const number = [];
  for (let code = 33, count = 0; code < 127; code++)
    if (!'"&<'.includes(String.fromCharCode(code))) number[code] = count++;
  const unpack = (id) => {
    const text = document.getElementById(id).textContent;
    const odd = text.length % 2;
    const bytes = new Uint8Array(Math.floor((((text.length - odd) / 2) * 13 + odd * 6) / 8));
    for (let i = 0, at = 0, held = 0, bits = 0; i < text.length; i += 2) {
      const last = i + 1 === text.length;
      held |= (number[text.charCodeAt(i)] + (last ? 0 : 91 * number[text.charCodeAt(i + 1)])) << bits;
      bits += last ? 6 : 13;
      for (; bits >= 8; bits -= 8, held >>= 8) bytes[at++] = held;
    }
    return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip")));
  };
  const url = URL.createObjectURL(new Blob([await unpack("program").text()], { type: "text/javascript" }));
  globalThis.crossgrain = { url, solver: () => unpack("solver").arrayBuffer() };
  const script = document.createElement("script");
  script.src = url;
  document.body.append(script);
})();
