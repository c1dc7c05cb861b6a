// Orders go to the program one after the other. Of several that set the same field only the
// last is sent; typing never waits for an answer.

import { morph } from "./morph.js"

const kit = document.body.dataset.kit
const page = document.body.dataset.page
const waiting = new Map() // orders not yet sent, by what they are about
let sending = false
let count = 0
let failures = 0 // one after the other; leaving the page can break off one
let next = "" // where to go when everything is sent
const hearers = []

export const address = path => "/kit/" + encodeURIComponent(kit) + "/" + path

// whenAnswered is told each answer, with the order that it is to.
export function whenAnswered(hearer) { hearers.push(hearer) }

// order sends an order and gives its answer. With a name it takes the place of one of the
// same name that still waits, before those that came after it and build on it.
export function order(asked, name) {
  return new Promise(resolve => {
    const key = name || "order-" + count++
    const before = waiting.get(key)
    if (before) before.resolve(null)
    waiting.set(key, { asked, resolve })
    send()
  })
}

async function send() {
  if (sending) return
  sending = true
  document.documentElement.dataset.busy = "yes"
  while (waiting.size > 0) {
    const [key, { asked, resolve }] = waiting.entries().next().value
    const now = typeof asked === "function" ? asked() : asked
    if (!now) { // there is nothing to ask for any more
      if (waiting.get(key)?.resolve === resolve) waiting.delete(key)
      resolve(null)
      continue
    }
    let answer
    try {
      answer = await post(now)
    } catch (problem) {
      failures++
      tellLost(problem.message)
      await new Promise(done => setTimeout(done, 1500))
      continue // it is sent again, with what has come to it since
    }
    failures = 0
    tellLost("")
    if (waiting.get(key)?.resolve === resolve) waiting.delete(key)
    take(answer, now)
    resolve(answer)
  }
  sending = false
  if (next) location.href = address(next)
  next = ""
  delete document.documentElement.dataset.busy
}

async function post(asked) {
  const body = JSON.stringify({ Page: page, Query: location.search, ...asked })
  const keepalive = body.length < 50000 // browsers keep no more than 64 KB on its way
  const response = await fetch(address("change"), { method: "POST", headers: { "Content-Type": "application/json" }, body, keepalive })
  if (response.status === 403) throw new Error("The program was started anew. Open the address that it printed in this browser; what you typed here is sent then.")
  if (response.status >= 500) throw new Error("The program could not answer. What you type stays in this page and is sent again.")
  if (!response.ok) return { wrong: await response.text() }
  return response.json()
}

// take shows what came of an order.
function take(answer, asked) {
  if (answer.page) show(answer.page)
  if (answer.wrong) tellWrong(answer.wrong, answer.field)
  else if (asked.Act !== "look") tellWrong("")
  for (const hearer of hearers) hearer(answer, asked)
  if (answer.go && !answer.wrong) follow(answer.go)
}

// show makes the page what a fresh one says.
export function show(html) {
  const fresh = new DOMParser().parseFromString(html, "text/html")
  for (const id of ["top", "tabs", "main", "tally"]) {
    const old = document.getElementById(id), wanted = fresh.getElementById(id)
    if (old && wanted) morph(old, wanted)
  }
}

function follow(go) {
  if (go.startsWith("#")) location.hash = go
  else next = go
}

// tellWrong says why nothing was done, beside the field that it is about.
export function tellWrong(words, field) {
  document.querySelectorAll(".refused[data-told]").forEach(old => old.remove())
  if (!words) return
  const told = document.createElement("p")
  told.className = "refused"
  told.dataset.told = ""
  told.setAttribute("role", "alert")
  told.textContent = words
  const place = field && document.getElementById(field + "-wrong") || document.getElementById("said")
  place.append(told)
}

export function say(words) {
  document.getElementById("said").textContent = words
}

// tellLost says why the program is not reached, until why is "".
export function tellLost(why) {
  let told = document.getElementById("lost")
  if (!why) { told?.remove(); return }
  if (why.includes("fetch")) why = "The program does not answer. What you type stays in this page and is sent as soon as it answers again; leave the page open."
  if (told) { told.textContent = why; return }
  told = document.createElement("p")
  told.id = "lost"
  told.className = "notice trouble"
  told.setAttribute("role", "alert")
  told.textContent = why
  document.getElementById("said").before(told)
}

// Who leaves the page is only held up where something typed could not be sent: what is on
// its way arrives without the page.
addEventListener("beforeunload", event => {
  const typed = [...waiting.keys()].some(key => key !== "look")
  if (typed && failures > 1) event.preventDefault()
})
