// What runs on every page of the workbench. Each page has what it needs besides in a file of
// its own.

import { listen } from "./fields.js"

const { kit, page } = document.body.dataset

listen()
if (kit) {
  const { hear } = await import("./news.js")
  hear()
  openNamed()
  addEventListener("hashchange", openNamed)
}
if (page === "box") (await import("./pictures.js")).listen()
if (page === "method") (await import("./method.js")).begin()
if (page === "booklet") (await import("./booklet.js")).begin()
if (page === "words") (await import("./words.js")).begin()

// openNamed opens what the address names, and goes there.
function openNamed() {
  const named = document.getElementById(decodeURIComponent(location.hash.slice(1)))
  if (!named) return
  for (let at = named; at; at = at.parentElement) if (at.nodeName === "DETAILS") at.open = true
  named.scrollIntoView({ block: "center" })
  const field = named.matches("details.card") ? named.querySelector("summary") : named.querySelector("input, select, textarea") || named
  field.focus?.({ preventScroll: true })
}
document.documentElement.dataset.ready = "yes"
