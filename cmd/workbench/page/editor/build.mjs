// Builds ../editor.js: `npm ci && npm run build` gives the same bytes each time.
import { build } from "esbuild"
import { readFileSync, readdirSync, existsSync, writeFileSync } from "node:fs"

const own = JSON.parse(readFileSync("package.json", "utf8"))
const folders = readdirSync("node_modules").flatMap(name => name.startsWith("@") ? readdirSync("node_modules/" + name).map(inner => name + "/" + inner) : [name])
const wanted = [...folders].sort().filter(name => !name.includes("esbuild") && !name.startsWith("."))
const told = []
const licences = []
for (const name of wanted) {
  const folder = "node_modules/" + name
  if (!existsSync(folder + "/package.json")) continue
  const { version, license } = JSON.parse(readFileSync(folder + "/package.json", "utf8"))
  told.push(`${name} ${version} (${license})`)
  const file = readdirSync(folder).find(name => /^licen[cs]e/i.test(name))
  licences.push(`${name} ${version}\n\n${file ? readFileSync(folder + "/" + file, "utf8").trim() : license}`)
}
await build({
  entryPoints: ["entry.mjs"], bundle: true, format: "esm", minify: true, target: "es2022", legalComments: "none", charset: "utf8", outfile: "../editor.js",
  banner: { js: `/* Bundled by page/editor/build.mjs with esbuild ${own.devDependencies.esbuild}: ${told.join(", ")}. Licences: page/editor/LICENSES.txt. */` },
})
writeFileSync("LICENSES.txt", licences.join("\n\n" + "-".repeat(72) + "\n\n") + "\n")
