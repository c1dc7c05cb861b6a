// Pictures that are dropped or chosen: they go into the kit's folder, and what shows them
// gets their name.

import { order, address, tellWrong } from "./orders.js"

// keepPicture gives the name under which a picture was kept, "" where it was not; why stands
// beside the field then.
export async function keepPicture(picture, field) {
  const response = await fetch(address("pictures/" + encodeURIComponent(picture.name)), { method: "POST", body: picture })
  const told = await response.text()
  if (response.ok) return told
  tellWrong(told, field)
  return ""
}

const cardOf = target => target.closest?.("[data-shows]")

// show makes a picture that of the thing whose card it is.
async function show(card, picture) {
  const { shows, field } = card.dataset
  const name = await keepPicture(picture, field)
  if (!name) return
  const was = document.getElementById(field + "-in")?.dataset.was || ""
  await order({ Act: "set", Path: JSON.parse(shows), Value: name, Was: was })
  card.open = true
}

export function listen() {
  document.addEventListener("dragover", event => {
    const card = event.dataTransfer?.types.includes("Files") && cardOf(event.target)
    if (!card) return
    event.preventDefault()
    card.classList.add("under-drop")
  })
  document.addEventListener("dragleave", event => {
    const card = cardOf(event.target)
    if (card && !card.contains(event.relatedTarget)) card.classList.remove("under-drop")
  })
  document.addEventListener("drop", event => {
    const card = cardOf(event.target), picture = event.dataTransfer?.files[0]
    if (!card || !picture) return
    event.preventDefault()
    card.classList.remove("under-drop")
    show(card, picture)
  })
  document.addEventListener("change", async event => {
    const { target } = event
    if (!target.matches("[data-choose-picture]") || !target.files[0]) return
    await show(cardOf(target), target.files[0])
    target.value = ""
  })
}
