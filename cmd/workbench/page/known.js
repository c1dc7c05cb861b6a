// What the program knows of the text in the editor. What was typed since stands behind it as
// changes, so that what the program changes meanwhile finds its place round them.

import { EditorState } from "./editor.js"

const stateOf = text => EditorState.create({ doc: text })

let known = stateOf(""), since = known.changes()
let print = "" // how the program tells that text from others
const places = new Set() // those that wait for their turn to be sent

// begin takes the text that the program gave first.
export function begin(first) {
  known = stateOf(first.text)
  since = known.changes()
  print = first.print
}

// changed follows every change of the editor, by whomever.
export function changed(update, byProgram) {
  if (!byProgram) since = since.compose(update.changes)
  for (const place of places) {
    place.from = update.changes.mapPos(place.from, 1)
    place.to = Math.max(place.from, update.changes.mapPos(place.to, -1))
  }
}

export const isAhead = () => !since.empty

// version is another after every text that was sent or taken over.
export const version = () => known
export const isKnown = other => other === print
export const printed = other => { print = other }

// told gives the whole text, to be sent now.
export function told(view) {
  known = stateOf(view.state.doc)
  since = known.changes()
  return { Text: known.doc.toString(), Print: print }
}

// held keeps a stretch of the editor for an order that is sent later, until it is let go.
export function held(from, to) {
  const place = { from, to }
  places.add(place)
  return place
}

export const letGo = place => places.delete(place)

// placed is where a stretch stands in the text that the program knows.
export function placed(place) {
  const back = since.invertedDesc
  return { Start: back.mapPos(place.from, 1), End: back.mapPos(place.to, -1) }
}

// takeOver makes the editor what the program made of the text that it knew, with what was
// typed since. Only what differs is changed, so that cursor and marks keep their places.
export function takeOver(view, fresh, annotations) {
  const now = known.doc.toString(), { text } = fresh
  print = fresh.print
  if (now === text) return
  let from = 0
  while (from < now.length && from < text.length && now[from] === text[from]) from++
  let behind = 0
  while (behind < now.length - from && behind < text.length - from && now[now.length - 1 - behind] === text[text.length - 1 - behind]) behind++
  const change = known.changes({ from, to: now.length - behind, insert: text.slice(from, text.length - behind) })
  view.dispatch({ changes: change.map(since), annotations })
  since = since.map(change, true)
  known = stateOf(text)
}
