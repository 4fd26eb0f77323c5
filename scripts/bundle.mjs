// Bundles JavaScript modules and shortens style sheets with esbuild. Takes {node, assets, builds, sheets} as JSON, where
// each build is a set of esbuild's options and sheets are texts by path. Prints {scripts: [{path: {text, imports}}], sheets},
// the scripts in the order of the builds; paths are below assets.
import { createRequire } from "node:module";
import { relative, resolve } from "node:path";
import { text } from "node:stream/consumers";

const { node, assets, builds, sheets } = JSON.parse(await text(process.stdin));
const { build, transform } = createRequire(resolve(node, "package.json"))("esbuild");
const OLDEST = ["chrome112", "firefox114", "safari16.4"];
const name = (path) => relative(assets, resolve(assets, path)).replaceAll("\\", "/");
const always = { absWorkingDir: assets, outdir: ".", outbase: ".", outExtension: { ".js": ".mjs" }, write: false, metafile: true };

const scripts = await Promise.all(
  builds.map(async (options) => {
    const { outputFiles, metafile } = await build({ ...always, bundle: true, format: "esm", target: OLDEST, charset: "utf8", ...options });
    const imports = Object.fromEntries(
      Object.entries(metafile.outputs).map(([path, { imports }]) => [
        name(path),
        imports.filter(({ kind, external }) => kind === "import-statement" && !external).map((one) => name(one.path)),
      ]),
    );
    return Object.fromEntries(outputFiles.map(({ path, text }) => [name(path), { text, imports: imports[name(path)] }]));
  }),
);
const shortened = await Promise.all(
  // an older browser, which gets no live calculator, passes over what it does not understand
  Object.entries(sheets).map(async ([path, css]) => [path, (await transform(css, { loader: "css", minify: true, charset: "utf8", target: OLDEST })).code]),
);
process.stdout.write(JSON.stringify({ scripts, sheets: Object.fromEntries(shortened) }));
