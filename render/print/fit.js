// Run by us in the page before it is printed. It lays the page out on pages of the given size as the browser is
// going to, as near as can be told without printing: so that page numbers are most often right in the first print,
// what is kept whole at too high a price may be split, and what does not fit is known by name.
//
// What the page says of itself:
//   data-page-of="id"   holds the number of the page on which that id begins
//   data-keep="0.3"     is kept whole unless that would leave more than this part of a page empty
//   data-clips          may cut off what it has too much of (writing lines)
//
// size: {width, height} of what the margins leave, in CSS pixels. type: {largest, smallest, step} in points, and how
// many pages there may be at most; without it the size of type stays. Gives {pages, numbers, fills, type, overflows}.
(async (size, type, title, language) => {
  if (title) document.title = title
  if (language) document.documentElement.lang = language
  // Unasked, a browser does not read the faces that only the margins of a printed page use.
  await Promise.allSettled(Array.from(document.fonts, font => font.load()))
  if (!size) return null

  const root = document.documentElement
  root.style.width = size.width + "px" // to the fraction of a pixel: lines break as they will in print
  const half = 0.5 // pixels within which two edges are the same
  const styles = new Map()
  const style = element => {
    if (!styles.has(element)) styles.set(element, getComputedStyle(element))
    return styles.get(element)
  }
  const shown = element => style(element).display !== "none" && style(element).position !== "absolute"
  const avoids = value => value === "avoid" || value === "avoid-page"
  // A page that shows itself in columns breaks them where it would break pages.
  const forces = value => value === "page" || value === "always" || value === "left" || value === "right" || value === "column"
  const solid = element => avoids(style(element).breakInside) || /^(IMG|svg|TR|FIGURE|FIELDSET)$/i.test(element.tagName)
  const inlineTags = /^(A|B|I|EM|STRONG|SPAN|BR|INPUT|TD|TH|LABEL|CODE|CITE|SMALL|SUP|SUB)$/
  const inline = element => inlineTags.test(element.tagName) && element.children.length === 0 || /^(inline|ruby|contents|table-cell)/.test(style(element).display)
  const blocksOf = element => Array.from(element.children).filter(child => shown(child) && !inline(child))

  // One page after the other: top is where the present page begins in the endless strip of the screen.
  const layOut = () => {
    const numbers = {}, fills = []
    const page = { number: 1, top: 0, bottom: 0 }
    let together = [] // what must stay with the block that comes next, by break-after: avoid
    const turn = top => {
      fills.push(Math.min(1, Math.max(0, (page.bottom - page.top) / size.height)))
      page.number++
      page.top = page.bottom = top
    }
    const note = (element, number) => { if (element.id) numbers[element.id] = number }
    const put = (box, parts) => { // a block that is not divided, or a paragraph of so many lines
      const room = page.top + size.height + half - box.top
      if (box.height <= room) { page.bottom = box.bottom; together = []; return }
      const line = parts > 1 ? box.height / parts : 0
      const fit = line ? Math.floor(room / line) : 0
      if (line && fit >= 2 && parts - fit >= 2) {
        page.bottom = box.top + fit * line
        turn(page.bottom)
      } else {
        // A heading goes over the page with what it heads, unless it opens the page already.
        const first = together.length > 0 && together[0].top > page.top + half ? together[0].top : box.top
        const ids = first < box.top ? together.flatMap(one => one.ids) : []
        if (first > page.top + half) turn(first)
        for (const id of ids) numbers[id] = page.number
      }
      while (box.bottom > page.top + size.height + half) {
        page.bottom = page.top + size.height
        turn(page.bottom)
      }
      page.bottom = box.bottom
      together = []
    }
    const lines = element => {
      const each = parseFloat(style(element).lineHeight)
      return each > 0 ? Math.max(1, Math.round(element.getBoundingClientRect().height / each)) : 1
    }
    const walk = (element, next) => {
      const box = element.getBoundingClientRect()
      if (forces(style(element).breakBefore) && box.top > page.top + half) turn(box.top)
      const whole = solid(element) && box.height <= size.height + half
      const inner = blocksOf(element)
      const kept = element.dataset.keep && whole
      if (whole && !(kept && mayDivide(element, box))) {
        put(box, 1)
        note(element, page.number)
        for (const below of element.querySelectorAll("[id]")) numbers[below.id] = page.number
      } else if (inner.length === 0) {
        put(box, solid(element) ? 1 : lines(element))
        note(element, page.number)
      } else {
        inner.forEach((child, place) => {
          walk(child, inner[place + 1])
          if (place === 0) note(element, numbers[child.id] || page.number)
        })
        if (box.bottom <= page.top + size.height) page.bottom = Math.max(page.bottom, box.bottom)
      }
      if (avoids(style(element).breakAfter) || next && avoids(style(next).breakBefore)) {
        const inside = Array.from(element.querySelectorAll("[id]"), one => one.id)
        const parent = element.parentElement
        if (element.id) inside.push(element.id)
        // The id of a section is where its heading is.
        if (parent && parent.id && parent.firstElementChild === element) inside.push(parent.id)
        together.push({ top: startOf(element), ids: inside })
      }
      if (forces(style(element).breakAfter)) turn(box.bottom)
    }
    // What a section has above its heading, a line or a gap, goes along with the heading.
    const startOf = element => {
      const parent = element.parentElement
      const first = parent && parent.firstElementChild === element && parent.tagName === "SECTION"
      return (first ? parent : element).getBoundingClientRect().top
    }
    // Where the part ends that must not be divided: headings and the like, and what they must stay with.
    const headOf = element => {
      const first = blocksOf(element).find((child, place, all) =>
        !avoids(style(child).breakAfter) && !(all[place + 1] && avoids(style(all[place + 1]).breakBefore)))
      if (!first) return element.getBoundingClientRect().bottom
      const box = first.getBoundingClientRect()
      const parts = solid(first) ? 1 : lines(first)
      return parts > 3 ? box.top + 2 * box.height / parts : box.bottom
    }
    const mayDivide = (element, box) => {
      const room = page.top + size.height + half - box.top
      if (box.height <= room) return false
      const divide = room / size.height > parseFloat(element.dataset.keep) && headOf(element) <= room + box.top
      element.classList.toggle("divided", divide)
      if (divide) styles.delete(element)
      return divide
    }
    for (const element of document.querySelectorAll(".divided")) element.classList.remove("divided")
    styles.clear()
    walk(document.body)
    turn(page.bottom)
    return { pages: page.number - 1, numbers, fills }
  }

  const tooMuch = () => { // of one page, laid out in columns: whatever stands beyond its edges
    const box = document.body.getBoundingClientRect()
    return root.scrollWidth > size.width + 1 || root.scrollHeight > size.height + 1 ||
      document.body.scrollWidth > box.width + 1 || document.body.scrollHeight > box.height + 1
  }
  const set = points => root.style.setProperty("--type", points + "pt")
  const fits = points => {
    set(points)
    return type.pages === 1 ? !tooMuch() : layOut().pages <= type.pages
  }
  let points = null
  if (type && type.largest > type.smallest) {
    // The largest size in whole steps that fits, found by halving.
    let low = 0, high = Math.round((type.largest - type.smallest) / type.step)
    const at = step => Math.round((type.smallest + step * type.step) * 100) / 100
    while (low < high) {
      const middle = Math.ceil((low + high) / 2)
      if (fits(at(middle))) low = middle
      else high = middle - 1
    }
    points = at(low)
  } else if (type) {
    points = type.largest
  }
  if (type) set(points)

  const laid = layOut()
  const overflows = []
  const near = element => {
    const named = element.closest("[id]")
    return named ? named.id : ""
  }
  const told = element => element.textContent.trim().replace(/\s+/g, " ").slice(0, 60)
  const drawings = /^(IMG|svg|TR)$/i
  const single = type && type.pages === 1
  for (const element of document.body.querySelectorAll(":not(svg *)")) {
    // What is looked at first costs little; styles are only asked where something may be wrong.
    const box = element.getBoundingClientRect()
    const wide = Math.max(box.right - size.width, -box.left)
    const tall = drawings.test(element.tagName) && box.height > size.height + 1
    const cut = element.scrollHeight > element.clientHeight + 1 && element.clientHeight > 0
    if ((wide <= 1 || single) && !tall && !cut || box.width === 0 || box.height === 0) continue
    if (style(element).position === "absolute") continue
    const tell = (way, by) => overflows.push({ way, by, id: near(element), text: told(element) })
    if (wide > 1 && !single) tell("wide", wide)
    if (tall) tell("tall", box.height - size.height)
    if (cut && style(element).overflowY === "hidden" && !element.closest("[data-clips]")) tell("clipped", element.scrollHeight - element.clientHeight)
  }
  if (type && (type.pages === 1 ? tooMuch() : laid.pages > type.pages)) {
    overflows.push({ way: "pages", by: laid.pages - type.pages, id: "", text: "" })
  }
  root.style.removeProperty("width")
  writeNumbers(laid.numbers)
  return JSON.stringify({ ...laid, type: points, overflows })
})
