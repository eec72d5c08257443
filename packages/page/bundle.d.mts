/** Options for vite's `build` that make the page's script one text. */
export declare const pageBundle: import('vite').InlineConfig & {
  build: import('vite').BuildOptions & { lib: import('vite').LibraryOptions }
}
