/** Valid SVG texts that between them use all that is read. */
export const SAMPLES: Readonly<Record<string, string>> = {
  tray: `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="200mm" viewBox="0 0 300 200">
  <title>Tray</title>
  <g id="outer" fill="none" stroke="#000" stroke-width="0.2">
    <title>Outer edge</title>
    <rect id="body" x="10" y="10" width="280" height="180" rx="24"/>
    <path id="pocket" d="M40 40H260V160H40ZM60 60v80h180v-80z" fill-rule="evenodd"/>
  </g>
  <circle id="hole" cx="150" cy="100" r="12.5"/>
  <ellipse cx="150" cy="100" rx="30" ry="18" style="fill:none;stroke:#f00"/>
  <polyline points="20,20 60,30 100,20" fill="none" stroke="black"/>
  <polygon points="200,30 230,30 215,50"/>
  <line x1="0" y1="0" x2="300" y2="200" stroke="black"/>
</svg>`,
  curves: `<svg xmlns="http://www.w3.org/2000/svg" width="10in" height="5in" viewBox="-50 -50 200 100">
  <path d="M0 0c10-20 30-20 40 0s30 20 40 0q10-15 20 0t20 0A15 25-30 0150 10L50 45-40 40z"/>
  <path d="M-30,-20a10 10 0 1110 10 10,10 0 01-10-10zm40 10.5.5.5-1-1h5V3H4v-6" fill="none" stroke="green"/>
  <path fill-rule="nonzero" d="M10 10 L20 10 20 20 10 20Z M12 12 L12 18 18 18 18 12Z"/>
</svg>`,
  copies: `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="210mm" height="148.5mm" viewBox="0 0 420 297" preserveAspectRatio="xMinYMax slice">
  <defs>
    <path id="leaf" d="M0 0C5-10 15-10 20 0 15 10 5 10 0 0Z"/>
    <g id="pair"><use href="#leaf"/><use xlink:href="#leaf" x="25" transform="rotate(30 10 0)"/></g>
    <symbol id="knob" viewBox="0 0 10 10" preserveAspectRatio="xMaxYMin meet"><circle cx="5" cy="5" r="5"/></symbol>
    <style>.x{fill:none}</style>
  </defs>
  <use id="first" href="#pair" x="40" y="40"/>
  <use id="second" href="#pair" transform="translate(100 80) scale(-1.5 2) skewX(12)"/>
  <use href="#knob" x="300" y="20" width="40" height="20"/>
  <svg x="10%" y="60%" width="80mm" height="3cm" viewBox="0 0 80 30"><rect width="100%" height="50%" ry="2"/></svg>
  <text x="5" y="5">words</text>
  <image href="http://example.org/a.png" width="10" height="10"/>
</svg>`,
  nested: `<svg xmlns="http://www.w3.org/2000/svg" width="100" height="100">
  <g transform="translate(50,50)"><g transform="rotate(45)"><g transform="matrix(1 .2 -.1 .9 3 4)"><g transform="skewY(-5)scale(2)">
    <rect id="deep" x="-5" y="-2.5" width="10" height="5" rx="1" ry="2"/>
    <g style="display:none"><circle r="3"/></g>
    <g visibility="hidden"><circle r="4"/><circle cx="9" r="1" visibility="visible"/></g>
  </g></g></g></g>
  <switch><foreignObject/><g><rect x="1pt" y="1pc" width="4Q" height="0.2in"/></g></switch>
  <a href="https://example.org"><ellipse cx="80" cy="20" rx="8"/></a>
</svg>`
}
