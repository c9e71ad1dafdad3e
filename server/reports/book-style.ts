/** What the book looks like beyond the style of every page: a record to leaf through, on a screen and on paper. */
export const BOOK_STYLE = `
header { padding: 2.5rem 0 1.5rem; border-bottom: 3px double var(--rule); }
header .kind { margin: 0; letter-spacing: .12em; text-transform: uppercase; font-size: .85rem; color: var(--faint); }
header h1 { font-size: 2.3rem; line-height: 1.15; margin: .3rem 0 1rem; }
header dl { display: grid; grid-template-columns: max-content 1fr; gap: .2rem 1.4rem; margin: 0 0 1rem; }
dt { color: var(--faint); } dd { margin: 0; }
header p:not(.kind), article p, section > p { max-width: 42rem; }
a { color: inherit; text-underline-offset: .15em; }
nav ol, nav ul { padding-left: 1.4rem; } nav ul { list-style: none; columns: 12rem; padding-left: .4rem; }
section > h2 { font-size: 1.5rem; margin: 3rem 0 .8rem; padding-bottom: .2rem; border-bottom: 1px solid var(--rule); }
h3 { font-size: 1.15rem; margin: 1.8rem 0 .4rem; break-after: avoid; }
h4 { font-size: 1rem; margin: 1.4rem 0 .3rem; break-after: avoid; font-variant-numeric: tabular-nums; }
.hours { font-weight: normal; color: var(--faint); padding-left: .6rem; }
article p { margin: .4rem 0; orphans: 3; widows: 3; }
.facts { list-style: none; margin: .4rem 0; padding: 0 0 0 .9rem; border-left: 2px solid var(--rule); font-size: .87rem; }
.facts li { overflow-wrap: anywhere; padding-left: 6.2rem; text-indent: -6.2rem; }
.facts .word { display: inline-block; min-width: 5.6rem; margin-right: .6rem; text-indent: 0; color: var(--faint); }
figure { margin: 1rem 0; break-inside: avoid; }
figure img { display: block; max-width: 100%; max-height: 36rem; width: auto; height: auto; background: #fff; border: 1px solid var(--rule); }
figcaption { font-style: italic; color: var(--faint); margin-top: .3rem; max-width: 42rem; }
figure.missing p { border: 1px dashed var(--rule); padding: 1rem; margin: 0; max-width: 42rem; overflow-wrap: anywhere; }
section table { font-size: .87rem; } td { overflow-wrap: break-word; } section tr.remark td { font-size: .95em; }
#measurements td.figure, #measurements td:last-child { white-space: nowrap; }
.reading { display: inline-block; vertical-align: middle; width: 9rem; height: auto; }
.drawing { margin: 1rem 0; break-inside: avoid; }
@media screen and (max-width: 44rem) {
  header h1 { font-size: 1.8rem; } header dl { grid-template-columns: 1fr; gap: 0; } dd { margin-bottom: .3rem; }
  #measurements td.figure, #measurements td:last-child { white-space: normal; }
  .facts li { padding-left: 0; text-indent: 0; } .facts .word { min-width: 0; }
}
@media print {
  body { font-size: 10.5pt; } section table { font-size: 8.5pt; } #joints table { font-size: 7.5pt; } .reading { width: 30mm; } header { padding-top: 30mm; border-bottom: 0; }
  section { break-before: page; } section > h2 { margin-top: 0; }
  #lives, #waived, #cautions { break-before: auto; } #lives > h2, #waived > h2, #cautions > h2 { margin-top: 12mm; break-after: avoid; }
  nav { break-before: avoid; } a { text-decoration: none; }
  figure img { max-height: 100mm; } thead { display: table-header-group; }
  @page { @bottom-center { content: counter(page); font: 9pt Georgia, "Times New Roman", serif; } }
}
`;
