// Shows a booklet page by page, in any browser and at once. The text is laid out in columns,
// each as wide and high as what the margins leave of a page: the browser breaks columns by
// the same rules as pages. It is a model of the print; the PDF is the judge.
//
// frame is an iframe of ours whose scripts don't run; html is the booklet as one file; form
// is render.Preview. Gives {pages, numbers, took, current(), goTo(page)}.

import { fitFor } from "./fit.js"

const pixel = 96 / 25.4 // CSS pixels in a millimetre
const half = 0.5 // pixels within which two edges are the same

export async function showPages(frame, html, form) {
  const begun = performance.now()
  const inside = frame.contentDocument
  const fresh = await fill(inside, html)
  await reckon(inside, form)
  const sheet = new Sheets(frame, form)
  sheet.setUp()
  const numbers = sheet.number()
  sheet.draw()
  if (fresh) sheet.goTo(1)
  return {
    pages: sheet.pages, numbers, took: performance.now() - begun,
    current: () => sheet.current(), goTo: page => sheet.goTo(page),
  }
}

// fill puts the text into the frame. Styles and faces are only read anew where they differ.
async function fill(inside, html) {
  const styles = html.slice(html.indexOf("<style>") + 7, html.indexOf("</style>"))
  const body = html.slice(html.indexOf(">", html.indexOf("<body")) + 1, html.lastIndexOf("</body>"))
  const [, language = "en", direction = "ltr"] = html.match(/<html lang="([^"]*)" dir="([^"]*)"/) || []
  inside.documentElement.lang = language
  inside.documentElement.dir = direction
  const old = inside.getElementById("print-rules")
  const fresh = !old || old.dataset.from !== String(styles.length) || old.from !== styles
  if (fresh) {
    old?.remove()
    const style = inside.createElement("style")
    style.id = "print-rules"
    style.from = styles
    style.dataset.from = styles.length
    style.textContent = asPrinted(styles) + ours
    inside.head.append(style)
  }
  inside.body.innerHTML = body
  if (fresh) await Promise.allSettled(Array.from(inside.fonts, font => font.load()))
  return fresh
}

// reckon asks the script that reckons before every print which steps are divided and how
// large the type is; it marks both in the text.
async function reckon(inside, form) {
  const { body, documentElement } = inside
  body.removeAttribute("style")
  documentElement.style.width = documentElement.style.height = ""
  documentElement.style.setProperty("--type", form.type + "pt")
  const type = form.smallest > 0 ? { largest: form.type, smallest: form.smallest, step: 0.1, pages: form.pages } : null
  const fit = fitFor(inside, element => inside.defaultView.getComputedStyle(element))
  await fit({ width: form.areaWidth * pixel, height: form.areaHeight * pixel }, type, "", "")
}

// asPrinted makes the rules for print count on the screen, and a page a column.
function asPrinted(styles) {
  return styles
    .replace(/@media\s+([^{]+)\{/g, (whole, where) => /\bprint\b/.test(where) ? "@media all {" : /\bscreen\b/.test(where) ? "@media not all {" : whole)
    .replace(/(break-(?:before|after)\s*:\s*)(?:page|always|left|right)\b/g, "$1column")
    .replace(/(break-(?:before|after|inside)\s*:\s*)avoid-page\b/g, "$1avoid")
}

// The sheets behind the text.
const ours = `
html { background: transparent !important; color-scheme: light; overflow: auto; }
body { position: relative; transform-origin: 0 0; }
.a-sheet { position: absolute; z-index: -1; background: var(--paper); box-shadow: 0 1px 5px rgb(0 0 0 / 0.35); }
.a-sheet p { position: absolute; margin: 0; font: 400 8pt "Booklet Label", sans-serif; color: #566065; white-space: nowrap; }
.a-sheet .folio { font-weight: 700; color: #1c2326; }
.a-sheet .draft { left: 0; right: 0; text-align: center; font-weight: 700; color: #1c2326; }
`

class Sheets {
  constructor(frame, form) {
    this.frame = frame
    this.form = form
    this.inside = frame.contentDocument
    this.root = this.inside.documentElement
    this.body = this.inside.body
    this.rtl = this.root.dir === "rtl"
    this.wide = form.areaWidth * pixel
    this.high = Math.ceil(form.areaHeight * pixel) // whole dots, as in print
    this.gap = (2 * Math.max(form.inner, form.outer) + 6) * pixel
    this.scale = 1
    this.pages = 1
  }

  // setUp lays the columns out, at full size: what is measured is measured so.
  setUp() {
    const { body } = this
    Object.assign(body.style, { transform: "none", margin: "0", width: this.wide + "px", height: this.high + "px" })
    if (this.form.way !== "single") Object.assign(body.style, { columns: `auto ${this.wide}px`, columnGap: this.gap + "px", columnFill: "auto" })
    else body.style.columns = "auto"
  }

  // page is the column in which a box begins, from 1.
  page(box) {
    const base = this.body.getBoundingClientRect()
    const along = this.rtl ? base.right - box.right : box.left - base.left
    return Math.max(1, Math.floor((along + half + this.gap / 2) / (this.wide + this.gap)) + 1)
  }

  count() {
    let last = 1
    for (const element of this.inside.querySelectorAll("main > *, main > * > *, main > * > * > *")) {
      for (const box of element.getClientRects()) if (box.height > half) last = Math.max(last, this.page(box))
    }
    return last
  }

  // number finds the page of every id and writes it where it is asked for.
  number() {
    const numbers = {}
    for (const element of this.inside.querySelectorAll("main [id]")) {
      const box = [...element.getClientRects()].find(one => one.width > 0 || one.height > 0)
      if (box) numbers[element.id] = this.page(box)
    }
    for (const place of this.inside.querySelectorAll("[data-page-of]")) place.textContent = numbers[place.dataset.pageOf] ?? ""
    this.pages = this.form.way === "single" ? 1 : this.count()
    return numbers
  }

  // draw puts the sheets behind the text and makes all as large as the frame has room for.
  draw() {
    const { form, body, root } = this
    const sheetWide = form.width * pixel, sheetHigh = form.height * pixel
    for (let page = 1; page <= this.pages; page++) body.append(this.sheet(page, sheetWide, sheetHigh))
    const edge = 12
    const room = this.frame.clientWidth - 2 * edge, tall = Math.min(innerHeight * 0.8, 860) - 2 * edge
    const scale = this.scale = Math.min(1.25, Math.max(Math.min(tall / sheetHigh, room / sheetWide), Math.min(0.6, room / sheetWide)))
    const side = this.margins(1).left
    const across = this.rtl ? { marginRight: edge + this.margins(1).right * scale + "px", marginLeft: "auto", transformOrigin: "100% 0" } : { marginLeft: edge + side * scale + "px", transformOrigin: "0 0" }
    Object.assign(body.style, { transform: `scale(${scale})`, marginTop: edge + form.top * pixel * scale + "px", ...across })
    root.style.height = (sheetHigh * scale + 2 * edge) + "px"
    root.style.width = Math.max(this.frame.clientWidth, (this.pages * (this.wide + this.gap) + sheetWide - this.wide) * scale + 2 * edge) + "px"
    const bar = 18 // what the browser's own scroll bar takes
    this.frame.style.height = sheetHigh * scale + 2 * edge + bar + "px"
    this.step = (this.wide + this.gap) * scale
  }

  // margins of a page: left pages mirror right ones. From right to left the first is a left one.
  margins(page) {
    const left = (page % 2 === 0) !== this.rtl && this.form.way === "bound"
    const inner = this.form.inner * pixel, outer = this.form.outer * pixel
    return left ? { left: outer, right: inner, isLeft: true } : { left: inner, right: outer, isLeft: false }
  }

  sheet(page, wide, high) {
    const { form } = this
    const sheet = this.inside.createElement("div")
    const sides = this.margins(page)
    sheet.className = "a-sheet"
    sheet.setAttribute("aria-hidden", "true")
    const along = (page - 1) * (this.wide + this.gap)
    Object.assign(sheet.style, { width: wide + "px", height: high + "px", top: -form.top * pixel + "px", left: (this.rtl ? -along : along) - sides.left + "px" })
    const put = (words, className, place) => {
      if (!words) return
      const line = this.inside.createElement("p")
      line.textContent = words
      line.className = className
      Object.assign(line.style, place)
      sheet.append(line)
    }
    if (form.draft) put(form.draft, "draft", { top: (form.top - 6) * pixel + "px" })
    const isCover = page === 1 && this.inside.querySelector("main > .cover:first-child, .language > .cover:first-child")
    if (isCover && form.way === "bound") return sheet
    const top = (form.height - form.bottom + 4) * pixel + "px"
    const size = form.footType + "pt", folio = form.footType + 1 + "pt"
    const inFrom = sides.isLeft ? { left: sides.left + "px" } : { right: sides.right + "px" }
    const outFrom = sides.isLeft ? { right: sides.right + "px" } : { left: sides.left + "px" }
    put(String(page), "folio", { top, fontSize: folio, ...inFrom })
    put(form.foot, "foot", { top, fontSize: size, ...outFrom })
    return sheet
  }

  current() {
    const along = Math.abs(this.root.scrollLeft)
    return Math.min(this.pages, Math.max(1, Math.round(along / this.step) + 1))
  }

  goTo(page) {
    const along = (page - 1) * this.step
    const still = matchMedia("(prefers-reduced-motion: reduce)").matches
    this.root.scrollTo({ left: this.rtl ? -along : along, behavior: still ? "instant" : "smooth" })
  }
}
