// The public surface of the server. Grouped by noun; nothing computed here.
export {}
