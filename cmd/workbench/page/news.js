// Hears of changes by other windows and other programs, and looks anew.

import { order, address, whenAnswered, tellLost } from "./orders.js"

let source = null
let seen = Number(document.body.dataset.news) // the number of the last change that the page shows

export function hear() {
  const begin = () => {
    source = new EventSource(address("news"))
    source.onmessage = event => {
      const told = Number(event.data)
      order(() => told > seen && { Act: "look" }, "look")
    }
    source.onopen = () => tellLost("")
    source.onerror = () => {
      // A connection that is refused is asked after; one that broke is tried again by itself.
      if (source?.readyState === EventSource.CLOSED) order({ Act: "look" }, "look")
      else setTimeout(() => { if (source?.readyState === EventSource.CONNECTING) tellLost("fetch") }, 2500)
    }
  }
  whenAnswered(answer => {
    seen = Math.max(seen, answer.news || 0)
    if (source?.readyState === EventSource.CLOSED) begin()
  })
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
