const KEY = 'castwright-theme'

/** Light and dim: as the system has it until the reader presses the button, then as pressed. */
export function offerThemes(): void {
  const button = document.getElementById('theme')
  if (button === null) return
  const root = document.documentElement
  const system = matchMedia('(prefers-color-scheme: dark)')
  const dim = () => (root.dataset['theme'] ?? (system.matches ? 'dim' : 'light')) === 'dim'
  const name = () => {
    button.textContent = dim() ? 'Light' : 'Dim'
  }
  const kept = read()
  if (kept === 'dim' || kept === 'light') root.dataset['theme'] = kept
  button.hidden = false
  name()
  system.addEventListener('change', name)
  button.addEventListener('click', () => {
    root.dataset['theme'] = dim() ? 'light' : 'dim'
    name()
    keep(root.dataset['theme'])
  })
}

// A page opened from a file, or with storage shut off, forgets: no harm.
function read(): string | null {
  try {
    return localStorage.getItem(KEY)
  } catch {
    return null
  }
}

function keep(theme: string): void {
  try {
    localStorage.setItem(KEY, theme)
  } catch {
    return
  }
}
