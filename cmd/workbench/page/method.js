// The editor of a text: what is typed is written down at once, and what comes of it is shown
// in the text and beside it.

import {
  EditorState, EditorView, Annotation, keymap, drawSelection, highlightSpecialChars, defaultKeymap, history, historyKeymap, undo, undoDepth,
  autocompletion, completionKeymap, lintKeymap, nextDiagnostic,
} from "./editor.js"
import { order, address, whenAnswered, tellWrong, say } from "./orders.js"
import { keepPicture } from "./pictures.js"
import { marked, sums, take, show, linkAt, couldAt } from "./marks.js"
import * as known from "./known.js"

const fromProgram = Annotation.define()
const by = id => document.getElementById(id)
let view, file, names

export async function begin() {
  const place = by("editor")
  if (!place) return
  file = place.dataset.file
  names = JSON.parse(place.dataset.names) || []
  const first = await (await fetch(address("text/" + encodeURIComponent(file)))).json()
  known.begin(first)
  view = new EditorView({ parent: place, state: EditorState.create({ doc: first.text, extensions: extensions(place) }) })
  take(view, first.marks)
  goTo(Number(place.dataset.at || 0))
  whenAnswered(answered)
  listen()
  place.dataset.seenReady = "yes"
}

function extensions(place) {
  return [
    history(), drawSelection(), highlightSpecialChars(), EditorView.lineWrapping, marked, sums,
    autocompletion({ override: [complete], icons: false }),
    keymap.of([
      { key: "Mod-Enter", run: linkHere }, { key: "Alt-n", run: nextDiagnostic }, { key: "Mod-z", run: takeBack },
      ...completionKeymap, ...lintKeymap, ...historyKeymap, ...defaultKeymap,
    ]),
    EditorView.cspNonce.of(document.body.dataset.word),
    EditorView.contentAttributes.of({ "aria-label": place.dataset.title + ", as text", spellcheck: "true", tabindex: "0" }),
    EditorView.updateListener.of(update => {
      if (!update.docChanged) return
      const byProgram = update.transactions.some(one => one.annotation(fromProgram))
      known.changed(update, byProgram)
      if (!byProgram) type()
    }),
    EditorView.domEventHandlers({ drop: event => dropped(event), dragover: event => event.dataTransfer?.types.includes("Files") && event.preventDefault() }),
  ]
}

// type sends what the editor holds; it is composed when its turn comes.
function type() {
  order(() => ({ Act: "type", File: file, ...known.told(view) }), "type")
}

function answered(answer, asked) {
  const ours = asked.File === file && ["type", "link", "undo", "redo"].includes(asked.Act)
  if (!ours) return look()
  if (answer.text !== undefined) takeOver(answer)
  else if (answer.print) known.printed(answer.print)
  if (answer.marks && !known.isAhead()) take(view, answer.marks)
}

// look takes over what another window or another program has made of the text.
async function look() {
  if (known.isKnown(by("editor").dataset.print) || known.isAhead()) return
  const version = known.version()
  const fresh = await (await fetch(address("text/" + encodeURIComponent(file)))).json()
  if (known.isAhead() || known.version() !== version) return
  takeOver(fresh)
  take(view, fresh.marks)
}

const takeOver = fresh => known.takeOver(view, fresh, fromProgram.of(true))

function goTo(at) {
  const place = Math.min(at, view.state.doc.length)
  view.dispatch({ selection: { anchor: place }, effects: EditorView.scrollIntoView(place, { y: "center" }) })
  if (at) view.focus()
}

function takeBack(target) {
  if (undoDepth(target.state) > 0) return undo(target)
  order({ Act: "undo", File: file })
  return true
}

// Linking words.

function linkHere() {
  const { main } = view.state.selection
  if (!main.empty) { linkChosen(); return true }
  const could = couldAt(view.state, main.head)
  if (could) link(could.from, could.to, view.state.sliceDoc(could.from, could.to), could.destination)
  else say("Nothing here is known to be linked. Choose the words and say what they are.")
  return true
}

function link(from, to, words, destination, whole) {
  const place = known.held(from, to)
  order(() => ({ Act: "link", File: file, ...known.placed(place), Was: whole ?? words, Value: words, Destination: destination })).then(() => known.letGo(place))
}

function linkChosen() {
  let { from, to } = view.state.selection.main
  const kind = by("link-kind").value, what = by("link-what").value
  const old = linkAt(view.state, from)
  const words = old ? view.state.sliceDoc(old.wordsFrom, old.wordsTo) : view.state.sliceDoc(from, to)
  if (!words.trim()) return tellWrong("Choose the words first, then say what they are.", "editor")
  if (old?.kind === "step" && kind === "step" && !what) return say("This is a step already.")
  if (old) link(old.from, old.to, words, kind + ":" + what, view.state.sliceDoc(old.from, old.to))
  else link(from, to, words, kind + ":" + what)
}

// relink gives a link what the row of its form says.
function relink(button) {
  const row = button.closest("li"), { dataset } = button
  const says = selector => row.querySelector(selector).value
  const ways = [...row.querySelectorAll(".way")].filter(way => way.value).map(way => way.dataset.name + "=" + way.value)
  const settings = [...ways, dataset.rest].filter(Boolean).join("&")
  const destination = says(".is") + ":" + says(".of") + (settings ? "?" + settings : "")
  link(Number(dataset.from), Number(dataset.to), says(".words"), destination, dataset.whole)
}

// offer fills a picker of a form when it is first wanted, with what the toolbar's own has; where
// something goes or is worked in, with what can hold it.
function offer(select) {
  if (select.dataset.seenFilled) return
  select.dataset.seenFilled = "yes"
  const now = select.value, holds = select.matches(".way")
  for (const one of by(select.dataset.like).options) {
    if (one.value === now || holds && one.value && !["vessel", "fill"].includes(one.dataset.links)) continue
    select.append(new Option(one.text, one.value))
  }
}

// another is what a row becomes when its words are said to be something else: what only the
// former kind could say is taken out.
function another(is) {
  const row = is.closest("li")
  const bare = by("link-kind").querySelector(`[value="${is.value}"]`).hasAttribute("data-bare")
  row.querySelector("[data-relink]").dataset.rest = ""
  for (const select of row.querySelectorAll(".way, .of")) {
    if (select.matches(".of") && !bare) continue
    if (![...select.options].some(one => !one.value)) select.append(new Option("not said", ""))
    select.value = ""
  }
}

function linkOff() {
  const old = linkAt(view.state, view.state.selection.main.head)
  if (!old) return tellWrong("Put the cursor into the marked words first.", "editor")
  link(old.from, old.to, view.state.sliceDoc(old.wordsFrom, old.wordsTo), "", view.state.sliceDoc(old.from, old.to))
}

// complete offers the names of things. Behind an amount the whole becomes a link.
function complete(context) {
  const word = context.matchBefore(/\p{L}[\p{L}-]*/u)
  if (!word && !context.explicit || word && word.text.length < 2 && !context.explicit) return null
  if (linkAt(context.state, context.pos)) return null
  const from = word ? word.from : context.pos
  return {
    from, validFor: /^[\p{L}-]*$/u,
    options: names.filter(one => !one.leads).map(one => ({ label: one.name, detail: one.kind, apply: (target, _completion, start, end) => put(target, one, start, end) })),
  }
}

const amount = /(?:\d[\d.,/ ]*|[¼½¾⅓⅔⅛])[\d.,/ ¼½¾⅓⅔⅛–-]*\s*(?:\p{L}{1,12}\.?|%)?(?:\s+of)?(?:\s+the)?\s+$|(?:all|half|the rest|the remainder)\s+of\s+(?:the\s+)?$/iu

function put(target, one, from, to) {
  const line = target.state.doc.lineAt(from)
  const before = line.text.slice(0, from - line.from).match(amount)
  let start = from, text = one.name
  if (one.links === "take" && before) {
    start = from - before[0].length
    text = `[${before[0]}${one.name}](take:${one.key})`
  } else if (one.links === "tool" || one.links === "vessel") {
    text = `[${one.name}](${one.links}:${one.key})`
  }
  target.dispatch({ changes: { from: start, to, insert: text }, selection: { anchor: start + text.length }, userEvent: "input.complete" })
}

// Pictures.

function dropped(event) {
  const picture = event.dataTransfer?.files[0]
  if (!picture) return false
  event.preventDefault()
  keep(picture)
  return true
}

async function keep(picture) {
  const name = await keepPicture(picture, "editor")
  if (name) putPicture(name)
}

function putPicture(name) {
  const at = view.state.selection.main.head
  const text = `[see the picture](picture:${name})`
  view.dispatch({ changes: { from: at, insert: text }, selection: { anchor: at + text.length } })
  view.focus()
}

function listen() {
  for (const way of ["focusin", "pointerdown"]) {
    document.addEventListener(way, event => { if (event.target.matches?.("select[data-like]")) offer(event.target) })
  }
  document.addEventListener("change", event => { if (event.target.matches(".is")) another(event.target) })
  by("link-do").addEventListener("click", linkChosen)
  by("link-off").addEventListener("click", linkOff)
  by("show-links").addEventListener("change", event => show(view, event.target.checked))
  by("link-what").addEventListener("change", event => {
    const links = event.target.selectedOptions[0]?.dataset.links
    if (links) by("link-kind").value = links
  })
  document.addEventListener("click", event => {
    const button = event.target.closest("[data-link], [data-relink], [data-picture], a[data-at]")
    if (!button) return
    const { dataset } = button
    if (dataset.at !== undefined) { event.preventDefault(); goTo(Number(dataset.at)); view.focus() }
    else if (dataset.picture) putPicture(dataset.picture)
    else if (dataset.link) link(Number(dataset.from), Number(dataset.to), dataset.words, dataset.link)
    else relink(button)
  })
  const drop = by("drop")
  drop?.addEventListener("dragover", event => event.preventDefault())
  drop?.addEventListener("drop", dropped)
  by("picture-in")?.addEventListener("change", event => { if (event.target.files[0]) keep(event.target.files[0]) })
}
