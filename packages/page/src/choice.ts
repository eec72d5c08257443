/**
 * Rows of buttons of which one is pressed: which face, which heights. What is chosen becomes an attribute of
 * the sheet, and the style shows the drawing that goes with it.
 */
export function pressChoices(chosen: (what: string, value: string) => void): void {
  const sheet = document.querySelector<HTMLElement>('.sheet')
  for (const row of document.querySelectorAll<HTMLElement>('.choice')) {
    const what = row.dataset['choice'] ?? ''
    for (const button of row.querySelectorAll('button')) {
      button.addEventListener('click', () => {
        for (const other of row.querySelectorAll('button'))
          other.setAttribute('aria-pressed', String(other === button))
        if (sheet) sheet.dataset[what] = button.value
        chosen(what, button.value)
      })
    }
  }
}
