/** Rows a weighing table has at most where it stands upright: its heading, A, B, twelve pigments, the total. */
const MOST_MIX_ROWS = 16

// On a narrow screen the weighing table stands upright: each part a row, what to weigh and measure beside it.
const MIX_ROWS = Array.from(
  { length: MOST_MIX_ROWS },
  (_, k) => `.mix tr>:nth-child(${k + 1}){grid-row:${k + 1}}`
).join('\n')

/**
 * The style of the printed run sheet: black on white, the palette and the type of the page. Sizes in rem; on
 * paper a rem is 10 pt. No size of paper is set, so that it prints on A4 and on Letter alike; a step, with its
 * safety lines, stays on one page. Browsers
 * do not align cells of a table on their baseline in print: rows are aligned at their foot, by padding.
 */
export const RUN_SHEET_STYLE = `
:root{color-scheme:light;--paper:#fff;--ink:#1d1b19;--ink-2:#45413b;--ink-3:#55504a;--line:#b9b1a2;--line-2:#d8d1c3;--edge:#6f6a62;--stop:#b3271e;--caution:#7a4b00;--sans:"Alegreya Sans","Gill Sans","Segoe UI",system-ui,sans-serif}
*{box-sizing:border-box}
html{background:#fff}
body{margin:0 auto;padding:1.6rem 1.5rem 3rem;max-width:52rem;background:var(--paper);color:var(--ink);font:400 1rem/1.3 var(--sans);font-variant-numeric:lining-nums tabular-nums;overflow-wrap:anywhere;-webkit-font-smoothing:antialiased}
h1,h2,h3,p,ul,ol,dl,dd,dt,table{margin:0;padding:0;font:inherit}
ul,ol{list-style:none}
b,strong{font-weight:700}
u{text-decoration:none;font-size:.82em;font-weight:400;color:var(--ink-3);margin-left:.18em}
.top{display:flex;justify-content:space-between;align-items:baseline;gap:1.5rem;color:var(--ink-2);border-bottom:2.5px solid var(--ink);padding-bottom:.4rem}
.top b{color:var(--ink)}
h1{font-size:2.1rem;font-weight:700;line-height:1.1;margin-top:.75rem;text-wrap:balance}
.about{font-size:1.06rem;margin-top:.3rem;color:var(--ink-2);text-wrap:pretty}
.facts{display:flex;flex-wrap:wrap;gap:.45rem 2rem;margin-top:.65rem}
.facts dt{font-size:.84rem;line-height:1.15;color:var(--ink-3)}
.facts dd{font-size:1.12rem;font-weight:500;line-height:1.25}
.head.facts{margin-top:.9rem}
.head.facts dd{font-size:1.3rem}
.verdict{margin-top:.9rem;font-size:1.12rem;font-weight:500;text-wrap:pretty}
.plain{margin-top:.35rem;color:var(--ink-2);break-after:avoid}
.over,.all{border:2px solid var(--ink);padding:.5rem .8rem .6rem;margin-top:.8rem;break-inside:avoid}
.all{border-width:1px;font-weight:500}
h2{font-size:1.3rem;font-weight:700;margin:1.5rem 0 .1rem;padding-bottom:.2rem;border-bottom:1.5px solid var(--ink);break-after:avoid}
.find{border-left:4px solid var(--edge);padding:.1rem 0 .15rem .7rem;margin-top:.55rem;break-inside:avoid}
.find .k{font-weight:700}
.find.stop{border-color:var(--stop)}
.find.stop .k{color:var(--stop)}
.find.caution{border-color:#d9982b}
.find.caution .k{color:var(--caution)}
.find.despite{border-color:var(--ink)}
.find .fix{color:var(--ink-2)}
.day{font-weight:700;font-size:1.12rem;padding:1rem 0 .3rem;break-after:avoid}
.step{display:grid;grid-template-columns:2.9rem minmax(0,1fr);border-top:1px solid var(--edge);padding:.6rem 0 .85rem;break-inside:avoid}
.box{display:block;width:1.75rem;height:1.75rem;border:1.6px solid var(--ink);margin-top:.12rem}
.r{display:flex;justify-content:space-between;align-items:baseline;gap:1rem}
.step h3{font-size:1.4rem;font-weight:700;line-height:1.15}
.step h3 .n{display:inline-block;min-width:1.5em;font-weight:400;color:var(--ink-2)}
.when{font-size:1.2rem;font-weight:500;white-space:nowrap}
.brief{color:var(--ink-2)}
.brief span+span::before{content:"·";margin:0 .4em;color:var(--ink-3)}
.does{margin-top:.45rem}
.does li{padding-left:1rem;text-indent:-1rem;font-size:1.06rem;line-height:1.28;text-wrap:pretty}
.does li+li{margin-top:.14rem}
.does li::before{content:"–";display:inline-block;width:1rem;text-indent:0;color:var(--ink-3)}
.mix{width:auto;min-width:60%;max-width:100%;border-collapse:collapse;margin-top:.55rem;border:solid var(--ink);border-width:1.5px 0}
.mix th,.mix td{text-align:right;padding:.15rem 0 .15rem 1.5rem;font-weight:400;vertical-align:bottom}
.mix th:first-child{text-align:left;padding-left:0;color:var(--ink-2)}
.mix thead th{font-size:.95rem;line-height:1.1;color:var(--ink-2);padding-top:.3rem;vertical-align:bottom}
.mix thead th:first-child{font-weight:700;color:var(--ink)}
.mix .g td{font-size:1.95rem;font-weight:700;line-height:1.1;white-space:nowrap}
.mix .g td u{font-size:1.06rem}
.mix .g th{padding-bottom:.29rem}
.mix .g td:last-child{font-weight:400}
.mix .ml td{padding-bottom:.35rem}
.mix .ml th{padding-bottom:.42rem}
.mix .ml td{font-size:1.2rem;white-space:nowrap}
.cups{margin-top:.35rem}
.cups .tick{display:inline-block;white-space:nowrap;margin-right:.9rem}
.cups i{display:inline-block;width:.95rem;height:.95rem;border:1.3px solid var(--ink);margin-right:.3rem;vertical-align:-.1rem}
.list{border-collapse:collapse;margin-top:.6rem;min-width:70%}
.list caption{text-align:left;font-size:.84rem;color:var(--ink-3);padding-bottom:.1rem}
.list th,.list td{text-align:right;padding:.1rem 0 .12rem 1.4rem;font-weight:500;border-bottom:1px solid var(--line-2)}
.list th:first-child{text-align:left;padding-left:0}
.list thead th{font-size:.84rem;font-weight:400;color:var(--ink-3);border-color:var(--edge)}
.when-table{min-width:100%}
.when-table th,.when-table td{text-align:left;vertical-align:top;font-weight:400;padding-left:1rem}
.when-table td:nth-child(2){font-weight:500}
.when-table td:nth-child(n+3){font-size:.9rem;color:var(--ink-2)}
.course{display:block;max-width:100%;height:auto;margin-top:.7rem}
.course path,.course circle{fill:none;stroke:var(--ink);stroke-width:.2px}
.course text{font-family:var(--sans);fill:var(--ink)}
.course .l-caption{fill:var(--ink-2)}
.course .i-curve{stroke-width:.42px;stroke-linecap:round}
.course .full{fill:var(--ink);stroke:none}
.course .i-limit{stroke:#d9982b;stroke-width:.38px}
.course .i-rule{stroke:var(--line-2)}
.course .i-ghost{stroke:var(--edge);stroke-dasharray:.8 .7}
.course .area{stroke:none}
.course .w-doubt{fill:#6f6a62;fill-opacity:.2}
.course .w-window{fill:#b4bf93}
.course .w-window-doubt{fill:#b4bf93;fill-opacity:.45}
.fill{display:flex;flex-wrap:wrap;gap:.7rem 1.6rem;margin-top:.85rem}
.fill li{display:flex;align-items:baseline;gap:.35rem;white-space:nowrap}
.fill .l{font-weight:500}
.fill .p{color:var(--ink-3);font-size:.9rem}
.fill .w{display:inline-block;width:4.4rem;border-bottom:1.2px solid var(--ink);height:1.15rem}
.safety{margin-top:.8rem;border:solid var(--ink);border-width:1.2px 0;padding:.32rem 0 .42rem;display:grid;grid-template-columns:4.6rem minmax(0,1fr);break-inside:avoid;break-before:avoid}
.safety .s{font-weight:700;font-size:.95rem}
.safety li{font-size:.95rem;line-height:1.26;text-wrap:pretty}
.safety li+li{margin-top:.28rem}
.safety em{font-style:italic;color:var(--ink-2)}
section>.safety{border-top:0;margin-top:.2rem}
.wait h3{font-weight:500}
.closing{margin-top:1.6rem;border-top:2.5px solid var(--ink);padding-top:.5rem;font-weight:500;break-inside:avoid}
@media (max-width:40rem){
body{padding:1rem .9rem 2rem}
.r{flex-wrap:wrap;gap:0 1rem}
.step{grid-template-columns:2.4rem minmax(0,1fr)}
.mix{display:grid;grid-template-columns:minmax(4.5rem,1fr) auto auto;align-items:baseline;min-width:0}
.mix thead,.mix tbody,.mix tr{display:contents}
.mix th,.mix td{grid-column:2;padding:.12rem 0 .12rem .6rem}
.mix thead th{grid-column:1;text-align:left;padding-left:0}
.mix .ml th,.mix .ml td{grid-column:3}
.mix .g td,.mix .g th,.mix .ml th,.mix .ml td,.mix thead th{padding-bottom:.14rem}
.mix .g td{font-size:1.45rem}
.mix .ml td{font-size:1.1rem}
.mix th:first-child{font-size:.95rem;padding-top:.3rem}
${MIX_ROWS}
.list{min-width:0;width:100%;overflow-wrap:normal}
.list th,.list td{padding-left:.45rem;font-size:.95rem}
.list thead th{font-size:.75rem}
.when-table,.when-table caption,.when-table tbody{display:block}
.when-table thead{display:none}
.when-table tr{display:grid;grid-template-columns:minmax(0,1fr) minmax(0,1.3fr);border-bottom:1px solid var(--line-2)}
.when-table th,.when-table td{border:0;padding-left:0}
.when-table td:nth-child(3){grid-column:2}
.when-table td:nth-child(4){grid-column:1/3}
.fill li{white-space:normal;flex-wrap:wrap}
.safety{grid-template-columns:1fr}
}
@media print{
html{font-size:84%}
body{padding:0;max-width:none}
.mix .g td{font-size:2.3rem}
.mix .g th{padding-bottom:.37rem}
.step{padding:.55rem 0 .75rem}
}
`
