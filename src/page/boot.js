// Unpacks the program, which serves the page and its workers alike, and starts it.
(async () => {
  const unpack = (id) => {
    const bytes = Uint8Array.from(atob(document.getElementById(id).textContent), (c) => c.charCodeAt(0));
    return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip")));
  };
  const url = URL.createObjectURL(new Blob([await unpack("program").text()], { type: "text/javascript" }));
  globalThis.crossgrain = { url, solver: () => unpack("solver").arrayBuffer() };
  const script = document.createElement("script");
  script.src = url;
  document.body.append(script);
})();
