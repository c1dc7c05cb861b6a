// Takes a translated file back.

import { order } from "./orders.js"

export function begin() {
  document.addEventListener("change", async event => {
    if (event.target.id !== "translated-in" || !event.target.files[0]) return
    await order({ Act: "translated", Text: await event.target.files[0].text() })
    event.target.value = ""
  })
}
