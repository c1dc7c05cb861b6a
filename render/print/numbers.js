// Writes page numbers where the page wants them: data-page-of="id" holds that of the page on which id begins.
const writeNumbers = numbers => {
  for (const place of document.querySelectorAll("[data-page-of]")) {
    const number = numbers[place.dataset.pageOf]
    place.textContent = number === undefined ? "" : String(number)
  }
}
