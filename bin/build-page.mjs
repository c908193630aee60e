// Makes the parts of the page, which `src/cli/results/page-file.ts` puts together to one HTML file that opens by double click.
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { brotliCompressSync, constants } from "node:zlib";
import { build, transform } from "esbuild";

/** Modules of Node that packages name and a browser has not; nothing of them is called on the page. */
const NODE_MODULES = /^(node:)?(os|util|fs|tty|path|url|module|stream|buffer)$/;

const withoutNode = (root) => ({
  name: "without-node",
  setup({ onResolve, onLoad }) {
    onResolve({ filter: NODE_MODULES }, ({ path }) => ({ path, namespace: "absent" }));
    onLoad({ filter: /./, namespace: "absent" }, () => ({
      contents: "module.exports = { release: () => '', inspect: { custom: Symbol('inspect') }, env: {} };",
      loader: "js",
    }));
    // The builds of these packages for browsers: the others want what only Node has.
    onResolve({ filter: /^csv-(parse|stringify)\/sync$/ }, ({ path }) => ({
      path: join(root, "node_modules", path.split("/")[0], "dist/esm/sync.js"),
    }));
    // Drawings are made and written, never read: without the reader and its tables of entities the page is smaller.
    onResolve({ filter: /^@xmldom\/xmldom$/ }, () => ({
      path: join(root, "node_modules/@xmldom/xmldom/lib/dom.js"),
    }));
    onResolve({ filter: /^highs$/ }, () => ({ path: join(root, "src/page/solver.ts") }));
  },
});

async function programText(root) {
  const { outputFiles } = await build({
    absWorkingDir: root,
    entryPoints: ["src/page/main.tsx"],
    bundle: true,
    minify: true,
    format: "iife",
    platform: "browser",
    target: "es2022",
    jsx: "automatic",
    jsxImportSource: "preact",
    define: {
      "process.env.NODE_ENV": '"production"',
      "process.versions": "undefined",
      "process.platform": '""',
    },
    charset: "utf8",
    legalComments: "none",
    plugins: [withoutNode(root)],
    write: false,
    logLevel: "warning",
    logOverride: { "empty-import-meta": "silent" },
  });
  return outputFiles[0].text;
}

const hashOf = (text) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;

/**
 * The page without its program and solver, and the program. The one script that is written in the page is let run by its
 * hash, and what that starts by `strict-dynamic`; nothing can be fetched. Styles are let be, since the book that is looked
 * at on the page has its own. `quality` is how hard the program is pressed, 1 to 11.
 */
export async function pageParts(root, quality) {
  const source = (name) => readFileSync(join(root, "src/page", name), "utf8");
  const [program, style, boot] = await Promise.all([
    programText(root),
    transform(source("style/page.css") + source("style/table.css"), { loader: "css", minify: true }).then(
      ({ code }) => code.trim(),
    ),
    transform(source("boot.js"), { loader: "js", minify: true, target: "es2022" }).then(({ code }) =>
      code.trim(),
    ),
  ]);
  const policy = [
    "default-src 'none'",
    `script-src ${hashOf(boot)} 'strict-dynamic' 'wasm-unsafe-eval'`,
    "worker-src blob:",
    "style-src 'unsafe-inline'",
    "img-src data: blob:",
    // The faces of the book that is looked at on the page.
    "font-src data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  const parts = { policy, style, boot };
  const shell = source("page.html").replace(/\{\{(\w+)\}\}/g, (left, name) => parts[name] ?? left);
  const pressed = brotliCompressSync(program, { params: { [constants.BROTLI_PARAM_QUALITY]: quality } });
  return { "page-shell.html": shell, "page-program.br": pressed };
}
