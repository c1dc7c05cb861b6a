// Stand-in until the true pages come: shows the booklet as one long page.
export async function showPages(frame, html) {
  frame.contentDocument.documentElement.innerHTML = html
  return { pages: 1, numbers: {}, took: 0, goTo() {}, current: () => 1 }
}
