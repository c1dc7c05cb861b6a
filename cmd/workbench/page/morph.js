// Makes a part of the page what a fresh one says and leaves alone what is the same, so that
// the cursor, the scroll and what is open stay. What is being typed is never touched.
//
//   data-own     what is inside belongs to a script of the page and stays
//   data-seen-…  what a script of the page notes of itself stays
//   data-told    what a script of the page tells somebody stays until the script takes it away

export function morph(old, fresh) {
  if (old.nodeType !== fresh.nodeType || old.nodeName !== fresh.nodeName || old.id !== fresh.id) {
    old.replaceWith(document.importNode(fresh, true))
    return
  }
  if (old.nodeType !== Node.ELEMENT_NODE) {
    if (old.data !== fresh.data) old.data = fresh.data
    return
  }
  if (old.id && !old.contains(document.activeElement) && old.isEqualNode(fresh)) return // most of a page
  attributes(old, fresh)
  if (old.hasAttribute("data-own")) return
  const chosen = old.value
  children(old, fresh)
  value(old, fresh, chosen)
}

// What a person has opened stays open, whatever the fresh page says.
const persons = new Set(["open", "aria-expanded", "data-typed"])

function attributes(old, fresh) {
  for (const { name, value } of fresh.attributes) {
    if (!persons.has(name) && old.getAttribute(name) !== value) old.setAttribute(name, value)
  }
  for (const { name } of [...old.attributes]) {
    if (!persons.has(name) && !name.startsWith("data-seen-") && !fresh.hasAttribute(name)) old.removeAttribute(name)
  }
}

function children(old, fresh) {
  const named = new Map()
  for (const child of old.children) if (child.id) named.set(child.id, child)
  let at = notTold(old.firstChild)
  for (const wanted of [...fresh.childNodes]) {
    const known = wanted.id && named.get(wanted.id)
    if (known) {
      if (known !== at) old.insertBefore(known, at)
      else at = notTold(at.nextSibling)
      morph(known, wanted)
    } else if (at && at.nodeType === wanted.nodeType && at.nodeName === wanted.nodeName && !at.id && !wanted.id) {
      const next = notTold(at.nextSibling)
      morph(at, wanted)
      at = next
    } else {
      old.insertBefore(document.importNode(wanted, true), at)
    }
  }
  while (at) {
    const next = notTold(at.nextSibling)
    at.remove()
    at = next
  }
}

// notTold is a node or the first behind it that was not put there to tell somebody something.
function notTold(node) {
  while (node?.dataset?.told !== undefined) node = node.nextSibling
  return node
}

// The value that a field shows is not the one in its attribute once somebody has typed, and
// what is chosen in a picker stays chosen where choices come before it.
function value(old, fresh, before) {
  const touched = old === document.activeElement || old.dataset.typed
  if (old.nodeName === "SELECT") {
    const chosen = [...fresh.options].findIndex(option => option.hasAttribute("selected"))
    if (old.dataset.set && !touched) old.selectedIndex = Math.max(chosen, 0)
    else if ([...old.options].some(option => option.value === before)) old.value = before
  } else if (touched) {
    return
  } else if (old.nodeName === "TEXTAREA") {
    if (old.value !== fresh.textContent) old.value = fresh.textContent
  } else if (old.nodeName === "INPUT" && (old.dataset.set || "fresh" in old.dataset) && old.value !== fresh.getAttribute("value")) {
    old.value = fresh.getAttribute("value")
  }
}
