// Fields and buttons: what is typed becomes orders.

import { order, tellWrong } from "./orders.js"

const pathOf = element => JSON.parse(element.dataset.set)
const by = id => document.getElementById(id)

const choices = { more: "choose…", unit: "unit" }
let keys = null // of all sections, asked for once

// offer fills a list when somebody comes to it; hundreds of them would make a page slow.
async function offer(select) {
  const { more, units, has } = select.dataset
  if (units) fillIn(select, JSON.parse(units).map(unit => ({ name: unit })))
  else {
    keys ||= await (await fetch("/page/keys.json")).json()
    const shown = JSON.parse(has)
    fillIn(select, keys[more].filter(key => !shown.includes(key.name)))
  }
}

function fillIn(select, all) {
  const wanted = all.map(one => one.name).join("\n")
  if (select.dataset.seenWanted === wanted) return
  select.dataset.seenWanted = wanted
  select.replaceChildren(new Option(select.dataset.units ? choices.unit : choices.more, ""), ...all.map(one => {
    const option = new Option(one.name, one.name)
    if (one.expected) option.title = one.expected
    return option
  }))
}

export function listen() {
  for (const way of ["focusin", "pointerdown"]) {
    document.addEventListener(way, event => {
      const select = event.target.closest?.("select[data-more], select[data-units]")
      if (select) offer(select)
    })
  }

  document.addEventListener("input", event => {
    const field = event.target.closest("[data-set]")
    // A field that is emptied to be written anew stays where it is in the file: only one that
    // is left empty is taken out.
    if (field && (field.value.trim() || field.nodeName === "SELECT")) set(field)
    else if (field) field.dataset.typed = "yes"
  })
  document.addEventListener("change", event => {
    const { target } = event
    if (target.dataset.set && !target.value.trim() && target.dataset.was) set(target)
    else if (target.matches("[data-more]") && target.value) more(target)
    else if (target.matches("[data-unit]") && target.value) unit(target)
  })
  document.addEventListener("click", event => {
    const button = event.target.closest("button")
    if (button) press(button)
  })
  document.addEventListener("submit", event => {
    const form = event.target.closest("[data-add-to]")
    if (!form) return
    event.preventDefault()
    addTo(form)
  })
}

// set sends what a field holds. What the page knew of it goes along, so that a change made
// in another window is not written over.
function set(field) {
  field.dataset.typed = "yes"
  const path = pathOf(field)
  order(() => ({ Act: "set", Path: path, Value: field.value, Was: field.dataset.was }), "set " + field.dataset.set).then(answer => {
    if (answer) delete field.dataset.typed
  })
}

// more shows a field that is still empty.
function more(select) {
  const query = new URLSearchParams(location.search)
  const path = [...(JSON.parse(select.dataset.path) || []), select.value]
  query.append("show", path.join("\x1f"))
  history.replaceState(null, "", "?" + query + location.hash)
  select.value = ""
  order({ Act: "look" }).then(() => {
    const wanted = JSON.stringify(path)
    for (const field of document.querySelectorAll("[data-set]")) {
      if (JSON.stringify(pathOf(field)) === wanted) return field.focus()
    }
    const group = document.getElementById("f-" + path.join(".").replace(/[^A-Za-z0-9.-]/g, "_"))
    group?.querySelector("[data-set]")?.focus()
  })
}

// unit puts another unit behind the figure that is there, in its tolerance too.
function unit(select) {
  const field = by(select.dataset.unit)
  const known = JSON.parse(select.dataset.units).sort((a, b) => b.length - a.length)
  const escaped = known.map(one => one.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")).join("|")
  const before = field.value
  field.value = before.replace(new RegExp("(?<=[0-9¼½¾⅓⅔⅛]\\s*)(?:" + escaped + ")(?![A-Za-z])", "g"), select.value)
  if (field.value === before && !before.includes(select.value)) field.value = (before.trim() + " " + select.value).trim()
  select.value = ""
  field.focus()
  set(field)
}

function press(button) {
  const { dataset } = button
  const path = dataset.path ? JSON.parse(dataset.path) : undefined
  if (dataset.act) {
    order({
      Act: dataset.act, Path: path, Number: Number(dataset.number || 0), Was: dataset.was, Value: dataset.value, File: dataset.file, Rule: dataset.rule, Key: dataset.key,
    })
  } else if (dataset.take) {
    const field = by(dataset.for)
    field.value = dataset.take
    set(field)
  } else if (dataset.add) {
    addEntry(by(dataset.add))
  } else if (dataset.name) {
    const key = by(dataset.key), says = by(dataset.says)
    handOver([key, says], { Act: "name", Path: JSON.parse(dataset.name), Key: key.value, Value: says.value })
  } else if (dataset.rename) {
    order({ Act: "rename", Path: JSON.parse(dataset.rename), Key: by(dataset.for).value })
  } else if (dataset.accept !== undefined) {
    order({ Act: "accept", Key: dataset.accept, Rule: dataset.rule, Was: dataset.was, Value: by(dataset.accept + "-because").value, Name: by(dataset.accept + "-until").value })
  } else if (dataset.back) {
    order({ Act: "back", Key: dataset.back, File: dataset.file })
  } else if (dataset.choose) {
    order({ Act: "choose", Key: dataset.choose, File: dataset.file, Text: dataset.choose === "both" ? by("both").value : "" })
  } else if (dataset.language && !dataset.translate) {
    order({ Act: "language", Key: by(dataset.language).value })
  } else if (dataset.translate) {
    order({ Act: "translate", Key: dataset.language, Was: dataset.translate, Value: by(dataset.for).value })
  } else if (dataset.all) {
    for (const box of document.querySelectorAll(".proposals input[type=checkbox]")) box.checked = dataset.all === "yes"
  } else if (dataset.unfold !== undefined) {
    const open = by("tally").classList.toggle("unfolded")
    button.setAttribute("aria-expanded", open)
    button.textContent = open ? "Less" : "More"
  }
}

function addEntry(input) {
  if (!input.value.trim()) return
  handOver([input], { Act: "set", Path: JSON.parse(input.dataset.next), Value: input.value, Was: "" })
}

// handOver empties fields at once, so that the next words can be typed into them, and puts
// back what was in them if nothing came of it.
async function handOver(fields, asked) {
  const words = fields.map(field => field.value)
  for (const field of fields) field.value = ""
  const answer = await order(asked)
  const done = answer && !answer.wrong
  if (!done && fields.every(field => !field.value)) fields.forEach((field, i) => { field.value = words[i] })
  return done
}

function addTo(form) {
  const input = form.querySelector("input")
  handOver([input], { Act: "add", Path: JSON.parse(form.dataset.addTo), Name: input.value }).then(done => {
    if (!done) return
    tellWrong("")
    const cards = form.parentElement.querySelectorAll(":scope > details.card")
    const last = cards[cards.length - 1]
    if (last) {
      last.open = true
      last.querySelector("[data-set]")?.focus()
    }
  })
}
