// The booklet, live: asked for anew whenever the kit has changed, and shown page by page.

import { address, whenAnswered, order } from "./orders.js"
import { showPages } from "./pages.js"

let stamp = null
let shown = null
let showing = false
const by = id => document.getElementById(id)

export function begin() {
  if (!by("choosing")) { // there is no booklet until the kit can be read
    whenAnswered(() => { if (by("choosing")) location.reload() })
    return
  }
  by("choosing").addEventListener("change", choose)
  by("choosing").addEventListener("submit", event => event.preventDefault())
  by("page-back").addEventListener("click", () => turn(-1))
  by("page-on").addEventListener("click", () => turn(1))
  whenAnswered(() => { if (by("preview").dataset.stamp !== stamp) refresh() })
  refresh()
}

function chosen() {
  const query = new URLSearchParams(new FormData(by("choosing")))
  return "?" + query
}

// choose puts the choice into the address and the links, so that it can be come back to.
async function choose() {
  history.replaceState(null, "", chosen())
  for (const link of document.querySelectorAll("[data-made]")) link.href = address("made/" + link.dataset.made) + chosen()
  await order({ Act: "look" })
  refresh()
}

async function refresh() {
  if (showing) { stamp = null; return }
  showing = true
  const preview = by("preview")
  do {
    stamp = preview.dataset.stamp
    const begun = performance.now()
    const response = await fetch(address("booklet.html") + chosen())
    const text = await response.text()
    if (!response.ok) { by("page-now").textContent = text; break }
    const form = JSON.parse(decodeURIComponent(response.headers.get("X-Form")))
    shown = await showPages(by("pages"), text, form)
    preview.dataset.seenTook = Math.round(performance.now() - begun)
    preview.dataset.seenPages = shown.pages
    by("pages").contentWindow.onscroll = tellPage
    preview.dataset.seenNumbers = JSON.stringify(shown.numbers)
    tellPage()
  } while (preview.dataset.stamp !== stamp)
  showing = false
}

function turn(pages) {
  if (!shown) return
  shown.goTo(Math.min(Math.max(shown.current() + pages, 1), shown.pages))
}

function tellPage() {
  by("page-now").textContent = `Page ${shown.current()} of ${shown.pages}`
}
