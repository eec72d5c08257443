import { decimals } from '../../../engine/src/quantity/format.ts'

/** Makes elements by hand: this view is its own entry and stands alone. */
export function element<K extends keyof HTMLElementTagNameMap>(
  name: K,
  attributes: Readonly<Record<string, string>> = {},
  ...children: (Node | string)[]
): HTMLElementTagNameMap[K] {
  const el = document.createElement(name)
  for (const [key, value] of Object.entries(attributes)) el.setAttribute(key, value)
  el.append(...children)
  return el
}

export function button(words: string, press: () => void): HTMLButtonElement {
  const b = element('button', { type: 'button', class: 'btn' }, words)
  b.addEventListener('click', press)
  return b
}

/** One of a few, each a button with words. */
export function choice<T extends string>(
  label: string,
  options: readonly (readonly [T, string])[],
  pick: (value: T) => void
): { readonly node: HTMLElement; set(value: T): void } {
  const node = element('div', { class: 'choice', role: 'group', 'aria-label': label })
  const buttons = options.map(([value, words]) => {
    const b = element('button', { type: 'button', value, 'aria-pressed': 'false' }, words)
    b.addEventListener('click', () => pick(value))
    return b
  })
  node.append(...buttons)
  return {
    node,
    set: value => {
      for (const b of buttons) b.setAttribute('aria-pressed', String(b.value === value))
    }
  }
}

/** A slider with its words before it and its value after it. */
export function slider(
  label: string,
  says: (mm: number) => string,
  slid: (mm: number, at: 'moving' | 'rest') => void
): { readonly node: HTMLElement; range(min: number, max: number): void; set(mm: number): void } {
  const input = element('input', { type: 'range', step: '0.1', 'aria-label': label })
  const out = element('output', { class: 'q' })
  const node = element('label', { class: 'round-slide' }, element('span', {}, label), input, out)
  const show = (mm: number) => {
    out.textContent = says(mm)
    input.setAttribute('aria-valuetext', says(mm))
  }
  input.addEventListener('input', () => {
    show(Number(input.value))
    slid(Number(input.value), 'moving')
  })
  input.addEventListener('change', () => slid(Number(input.value), 'rest'))
  return {
    node,
    range: (min, max) => {
      input.min = String(min)
      input.max = String(max)
    },
    set: mm => {
      input.value = String(mm)
      show(mm)
    }
  }
}

export const tenths = (mm: number): string => decimals(mm, 1)
