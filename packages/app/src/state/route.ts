import { signal } from '@preact/signals'

/** What is shown of the piece on the desk. */
type SheetPart = 'sheet' | 'photo' | 'cuts' | 'days' | 'bench' | 'buy' | 'print'

export type Route =
  | { readonly at: 'pieces' }
  | { readonly at: 'sheet'; readonly id: string; readonly part: SheetPart }
  | { readonly at: 'shop' }
  | { readonly at: 'devices' }
  | { readonly at: 'pair' }

export const route = signal<Route>(read(location.pathname))

function read(path: string): Route {
  const sheet = /^\/piece\/([a-z0-9]{8,24})(?:\/(photo|cuts|days|bench|buy|print))?$/.exec(path)
  if (sheet !== null) return { at: 'sheet', id: sheet[1]!, part: (sheet[2] ?? 'sheet') as SheetPart }
  if (path === '/shop' || path === '/devices' || path === '/pair')
    return { at: path.slice(1) as 'shop' | 'devices' | 'pair' }
  return { at: 'pieces' }
}

addEventListener('popstate', () => {
  route.value = read(location.pathname)
})

/** Goes to a place of the app. */
export function go(path: string): void {
  if (path !== location.pathname) history.pushState(null, '', path)
  route.value = read(path)
  scrollTo(0, 0)
}

/** For links: goes there without loading the page anew, unless another window is asked for. */
export function follow(event: MouseEvent): void {
  if (event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0) return
  const link = (event.currentTarget as HTMLAnchorElement).getAttribute('href')
  if (link === null) return
  event.preventDefault()
  go(link)
}
