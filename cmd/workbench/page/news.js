// Hears of changes by other windows and other programs, and looks anew.

import { order, address, idle } from "./orders.js"

let source = null

export function hear() {
  const begin = () => {
    source = new EventSource(address("news"))
    source.onmessage = () => { if (idle()) order({ Act: "look" }, "look") }
  }
  // A page that nobody sees needs no news: browsers keep few connections to one place.
  document.addEventListener("visibilitychange", () => {
    source?.close()
    source = null
    if (document.visibilityState === "visible") {
      begin()
      order({ Act: "look" }, "look")
    }
  })
  if (document.visibilityState === "visible") begin()
}
