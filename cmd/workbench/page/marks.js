// What the editor shows in its text: links as marked words with their destinations out of
// sight, words that could be linked, findings under the words they are about.

import { StateEffect, StateField, EditorView, Decoration, WidgetType, hoverTooltip, setDiagnostics } from "./editor.js"

const setMarks = StateEffect.define()
const setShown = StateEffect.define()
const none = { links: [], findings: [], could: [], asked: [] }

// marked keeps the marks in their places while text is typed around them.
export const marked = StateField.define({
  create: () => ({ links: [], could: [], asked: [], shown: false, drawn: Decoration.none, hidden: Decoration.none }),
  update(held, transaction) {
    let next = held
    if (transaction.docChanged) next = { ...held, ...moved(held, transaction.changes) }
    for (const effect of transaction.effects) {
      if (effect.is(setMarks)) next = { ...next, ...effect.value }
      if (effect.is(setShown)) next = { ...next, shown: effect.value }
    }
    return next === held ? held : { ...next, ...draw(next, transaction.state.doc.length) }
  },
  provide: field => [
    EditorView.decorations.from(field, held => held.drawn),
    EditorView.atomicRanges.of(view => view.state.field(field).hidden),
  ],
})

function moved(held, changes) {
  const move = mark => ({
    ...mark, from: changes.mapPos(mark.from, 1), to: changes.mapPos(mark.to, -1),
    ...(mark.wordsFrom === undefined ? {} : { wordsFrom: changes.mapPos(mark.wordsFrom, -1), wordsTo: changes.mapPos(mark.wordsTo, 1) }),
  })
  const stays = mark => mark.from < mark.to
  return { links: held.links.map(move).filter(stays), could: held.could.map(move).filter(stays), asked: held.asked.map(move).filter(stays) }
}

function draw(held, length) {
  const drawn = [], hidden = []
  for (const link of held.links) {
    if (link.to > length || link.wordsTo < link.wordsFrom) continue
    if (link.wordsTo > link.wordsFrom) {
      drawn.push(Decoration.mark({ class: "linked is-" + link.kind }).range(link.wordsFrom, link.wordsTo))
    }
    if (held.shown) continue
    if (link.wordsTo === link.wordsFrom) {
      if (link.stands) hidden.push(Decoration.replace({ widget: new Stands(link.stands) }).range(link.from, link.to))
      continue
    }
    for (const [from, to] of [[link.from, link.wordsFrom], [link.wordsTo, link.to]]) {
      if (to > from) hidden.push(Decoration.replace({}).range(from, to))
    }
  }
  for (const could of held.could) if (could.to <= length) drawn.push(Decoration.mark({ class: "could-link" }).range(could.from, could.to))
  for (const asked of held.asked) if (asked.to <= length && asked.to > asked.from) drawn.push(Decoration.mark({ class: "asked-about" }).range(asked.from, asked.to))
  return { drawn: Decoration.set([...drawn, ...hidden], true), hidden: Decoration.set(hidden, true) }
}

// Stands shows what the booklet puts in the place of a link without words.
class Stands extends WidgetType {
  constructor(words) { super(); this.words = words }
  eq(other) { return other.words === this.words }
  toDOM() {
    const shown = document.createElement("span")
    shown.className = "no-words"
    shown.textContent = this.words
    return shown
  }
}

// take puts the marks of an answer into the editor.
export function take(view, marks) {
  const { links, could, asked, findings } = marks || none
  view.dispatch({ effects: setMarks.of({ links, could, asked }) })
  const length = view.state.doc.length
  view.dispatch(setDiagnostics(view.state, findings.filter(one => one.from <= length).map(one => ({
    from: one.from, to: Math.min(Math.max(one.to, one.from), length), message: one.says, renderMessage: () => tell(one),
    severity: one.class === "must-fix" ? "error" : one.class === "should-fix" ? "warning" : "info",
  }))))
}

export function show(view, shown) { view.dispatch({ effects: setShown.of(shown) }) }

export const linkAt = (state, at) => state.field(marked).links.find(link => link.from <= at && at <= link.to)

// couldAt is the link that could be made at a place, else the first in its line.
export function couldAt(state, at) {
  const { could } = state.field(marked)
  const line = state.doc.lineAt(at)
  return could.find(one => one.from <= at && at <= one.to) || could.find(one => one.from >= line.from && one.to <= line.to)
}

function tell(one) {
  const told = document.createElement("div")
  const say = (name, words, className) => {
    const line = document.createElement(name)
    line.textContent = words
    if (className) line.className = className
    told.append(line)
  }
  say("p", one.severity + ": " + one.says)
  for (const line of one.sum || []) say("p", line, "sum")
  for (const line of one.do) say("p", line + ".", "do")
  return told
}

// sums tells on hover what a link does, with its sum; what words could be linked to, with
// buttons that do it; and what a reader would ask.
export const sums = hoverTooltip((view, at) => {
  const { links, could, asked } = view.state.field(marked)
  const under = mark => mark.from <= at && at <= mark.to
  const link = links.find(under), word = could.find(under), question = asked.find(under)
  if (link) return tooltip(link.wordsFrom, link.wordsTo, lines(link.does))
  if (word) return tooltip(word.from, word.to, [...lines([word.meaning, word.why]), ...buttons(view, word)])
  if (question) return tooltip(question.from, question.to, lines([question.asks, question.advice]))
  return null
})

const tooltip = (pos, end, inside) => ({
  pos, end, above: true,
  create: () => {
    const dom = document.createElement("div")
    dom.className = "does"
    dom.append(...inside)
    return { dom }
  },
})

const lines = all => all.map(words => {
  const line = document.createElement("p")
  line.textContent = words
  return line
})

// buttons are pressed like those below the editor: method.js listens for both.
function buttons(view, word) {
  const { file } = document.getElementById("editor").dataset
  return [{ destination: word.destination, meaning: "Link" }, ...word.others].filter(one => one.destination).map((one, place) => {
    const button = document.createElement("button")
    button.type = "button"
    button.className = "small"
    button.textContent = place === 0 ? one.meaning : "rather: " + one.meaning
    Object.assign(button.dataset, { link: one.destination, from: word.from, to: word.to, words: view.state.sliceDoc(word.from, word.to), file })
    return button
  })
}
