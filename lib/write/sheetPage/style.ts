/** The page's own style: one column, system letters, light and dark, readable on paper. */
export const STYLE = `
:root { color-scheme: light dark; --ink: #1c1e21; --paper: #fdfdfc; --line: #c9ccd1; --soft: #f1f2f0; --bad: #a3200d; --good: #1c6b35; --focus: #0b5cad; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #e6e7e9; --paper: #17191c; --line: #43474d; --soft: #212428; --bad: #ff9c8a; --good: #8fd6a2; --focus: #7db8ff; }
}
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 62rem; padding: 1.25rem; background: var(--paper); color: var(--ink); font: 1rem/1.5 system-ui, sans-serif; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0; overflow-wrap: anywhere; }
h2 { font-size: 1.2rem; margin: 2.2rem 0 0.6rem; border-bottom: 1px solid var(--line); padding-bottom: 0.2rem; }
p, li { max-width: 46rem; overflow-wrap: anywhere; }
.verdict { font-weight: 600; }
.verdict.fails, .fails td:nth-child(2) { color: var(--bad); }
.verdict.holds, .holds td:nth-child(2) { color: var(--good); }
.fails td:nth-child(2) { font-weight: 600; }
.scroll { overflow-x: auto; margin: 0.8rem 0; }
table { border-collapse: collapse; width: 100%; font-size: 0.92rem; }
caption { text-align: left; font-weight: 600; padding: 0.2rem 0; }
th, td { text-align: left; vertical-align: top; padding: 0.35rem 0.7rem 0.35rem 0; border-bottom: 1px solid var(--line); }
thead th { border-bottom: 2px solid var(--line); white-space: nowrap; }
tbody th { font-weight: 500; white-space: nowrap; }
td.figure { font-variant-numeric: tabular-nums; white-space: nowrap; }
td:last-child { min-width: 9rem; }
/* On a phone the words are read by scrolling the table, not as a column of single words. */
@media (max-width: 40rem) { .scroll td:last-child:not(.figure) { min-width: 70vw; } }
.figure:last-child { min-width: 0; }
figure { margin: 1rem 0; }
figure > div { background: #fff; border: 1px solid var(--line); }
figure svg { display: block; max-width: 100%; height: auto; margin: 0 auto; }
figcaption { font-size: 0.9rem; }
pre { overflow-x: auto; background: var(--soft); padding: 0.8rem; font-size: 0.85rem; }
footer { margin-top: 2.5rem; border-top: 1px solid var(--line); font-size: 0.85rem; }
@media print {
  :root { color-scheme: light; --ink: #000; --paper: #fff; --line: #999; --soft: #fff; --bad: #000; --good: #000; }
  body { max-width: none; padding: 0; font-size: 9.5pt; }
  .scroll { overflow: visible; }
  th, td { padding-top: 0.15rem; padding-bottom: 0.15rem; }
  tr, figure, h2, li { break-inside: avoid; }
  h2 { break-after: avoid; }
  figure svg { max-height: 17cm; }
}
`;
