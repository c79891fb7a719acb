/**
 * The looks of the job book on screens and, where a browser prints it, on paper. Contrast at least 4.5 : 1. On a phone drawings begin
 * in their own size, to be moved about in, since as wide as the screen nobody reads their figures.
 */
export const pageStyle = `
:root{color-scheme:light;--paper:#fff;--ground:#f3f1ec;--ink:#1b1b19;--soft:#55524b;--line:#b9b4a8;--mark:#0b5c4a;--on-mark:#fff;--done:#dcefe6;--care:#8a3b00}
:root[data-theme=dark]{color-scheme:dark;--paper:#23241f;--ground:#161713;--ink:#f1efe8;--soft:#c0bcb0;--line:#5b5a51;--mark:#7fdcbb;--on-mark:#10211b;--done:#21443a;--care:#ffb27a}
@media (prefers-color-scheme:dark){:root:not([data-theme=light]){color-scheme:dark;--paper:#23241f;--ground:#161713;--ink:#f1efe8;--soft:#c0bcb0;--line:#5b5a51;--mark:#7fdcbb;--on-mark:#10211b;--done:#21443a;--care:#ffb27a}}
*{box-sizing:border-box}
html{scroll-padding-top:9rem}
body{margin:0;background:var(--ground);color:var(--ink);font:1.0625rem/1.5 'DejaVu Sans','Segoe UI',Roboto,Arial,sans-serif;overflow-wrap:anywhere}
a{color:var(--mark)}
:focus-visible{outline:3px solid var(--mark);outline-offset:2px}
.skip{position:absolute;left:-999rem}
.skip:focus{left:.5rem;top:.5rem;z-index:9;background:var(--paper);padding:.75rem}
.bar{position:sticky;top:0;z-index:5;background:var(--paper);border-bottom:1px solid var(--line);padding:.5rem .75rem}
.bar form,.tools{display:flex;flex-wrap:wrap;gap:.5rem;align-items:center}
.bar label{font-weight:bold}
.bar input{flex:1 1 9rem;min-width:0;min-height:48px;font:inherit;padding:.25rem .75rem;color:inherit;background:var(--ground);border:1px solid var(--soft);border-radius:.4rem}
button{font:inherit;min-height:48px;min-width:48px;padding:.25rem .9rem;color:var(--on-mark);background:var(--mark);border:0;border-radius:.4rem;cursor:pointer}
button.quiet{color:var(--ink);background:transparent;border:1px solid var(--soft)}
#count{margin:0}
#progress{margin:0;color:var(--soft)}
#found{list-style:none;margin:.5rem 0 0;padding:0;max-height:45vh;overflow:auto}
#found:empty{display:none}
#found a{display:flex;align-items:center;min-height:48px;padding:.25rem .5rem;border-top:1px solid var(--line)}
main{max-width:64rem;margin:0 auto;padding:0 .75rem 4rem}
header.cover{padding:1.5rem 0 .5rem}
h1{margin:0;font-size:2rem;line-height:1.2}
h1 small{display:block;font-size:1rem;font-weight:normal;color:var(--soft)}
nav ul{list-style:none;margin:0;padding:0;display:grid;grid-template-columns:repeat(auto-fill,minmax(min(17rem,100%),1fr));gap:0 1rem}
nav a,summary{display:flex;align-items:center;min-height:48px}
summary{cursor:pointer;color:var(--mark)}
summary::before{content:'▸';width:1.2rem}
details[open]>summary::before{content:'▾'}
nav ul ul{padding-left:1.2rem}
nav li:has(details[open]){grid-column:1/-1}
section{background:var(--paper);border:1px solid var(--line);border-radius:.6rem;padding:.25rem 1rem 1rem;margin:1rem 0}
section.over{background:none;border:0;padding:0;margin-bottom:0}
h2{font-size:1.5rem;margin:.75rem 0}
h3{font-size:1.25rem;margin:.75rem 0}
h4{font-size:1.0625rem;margin:1.25rem 0 .5rem}
.scroll{overflow:auto}
table{border-collapse:collapse;width:100%;font-size:.9375rem;overflow-wrap:normal}
caption{text-align:left;font-weight:bold;padding:.75rem 0 .25rem}
th,td{text-align:left;vertical-align:top;padding:.5rem;border-bottom:1px solid var(--line)}
th{color:var(--soft);font-weight:normal;vertical-align:bottom}
.figure{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap}
th.figure{white-space:normal}
tr.sum td{font-weight:bold}
tr.all td,li.all{background:var(--done)}
.tick{width:60px}
.tick label{display:flex;justify-content:center;align-items:center;min-width:48px;min-height:48px;margin:-.5rem}
input[type=checkbox]{width:1.6rem;height:1.6rem;flex:none;margin:0;accent-color:var(--mark)}
ul.ticks{list-style:none;margin:0;padding:0;display:grid;grid-template-columns:repeat(auto-fill,minmax(min(22rem,100%),1fr));gap:0 1rem}
ul.ticks label{display:flex;gap:.75rem;align-items:center;min-height:52px;padding:.25rem;border-bottom:1px solid var(--line)}
ul.ticks label:has(:checked){background:var(--done)}
ol.steps{padding-left:2.75rem;margin:0}
ol.steps li{padding:.35rem 0;border-bottom:1px solid var(--line)}
ol.steps li::marker{font-weight:bold}
ol.steps p{margin:0}
ol.steps .gives{font-weight:bold}
ol.steps .care{color:var(--care);font-weight:bold}
.drawing{overflow:auto;background:#fff;border:1px solid var(--line);max-height:80vh;margin:.5rem 0}
.drawing svg{display:block;height:auto}
.drawing[data-zoom] svg{width:100%}
@media (min-width:40.01rem){.drawing svg{width:100%}}
.drawing:not([data-zoom]) svg,.drawing[data-zoom="0"] svg{max-height:78vh}
.drawing[data-zoom="1"] svg{width:175%}
.drawing[data-zoom="2"] svg{width:300%}
.drawing[data-zoom="3"] svg{width:500%}
.drawing svg>g{pointer-events:none}
.hit{fill:#fff;fill-opacity:0;cursor:pointer;pointer-events:all}
.hit.done{fill:#0b5c4a;fill-opacity:.35}
.hit.wanted{stroke:#b00020;stroke-width:1.2}
.strong{font-weight:bold}
footer{color:var(--soft);max-width:64rem;margin:0 auto;padding:0 .75rem 3rem}
@media (min-width:62rem){main{max-width:84rem}.beside{display:grid;grid-template-columns:1fr 1fr;gap:0 1.5rem}}
@media (max-width:56rem){th:not(.tick),td:not(.tick){padding:.5rem .35rem}}
@media screen and (max-width:40rem){
.cards,.cards tbody,.cards caption{display:block}
.cards thead{position:absolute;left:-999rem}
.cards tr{display:grid;grid-template-columns:repeat(auto-fill,minmax(6.5rem,1fr));gap:.35rem .75rem;padding:.6rem 0;border-bottom:1px solid var(--line)}
.cards td{display:block;border:0;padding:0;text-align:left;white-space:normal}
.cards td.long{grid-column:1/-1}
.cards td:empty{display:none}
.cards td::before{content:attr(data-head);display:block;font-size:.8125rem;color:var(--soft)}
.cards td.tick::before{text-align:center}
.cards td.tick{justify-self:start}
.cards td.tick label{margin:0}
}
@media screen and (max-width:40rem){
.drawing:not([data-zoom]) svg{max-height:none}
.drawing[data-zoom="1"] svg{width:300%}
.drawing[data-zoom="2"] svg{width:500%}
.drawing[data-zoom="3"] svg{width:800%}
}
@media (max-width:40rem){body{font-size:1rem}table{font-size:.875rem}th,td{padding:.4rem .3rem}section{padding:.25rem .6rem .75rem}.bar label{position:absolute;left:-999rem}}
@media print{
@page{margin:12mm}
:root,:root[data-theme=dark],:root:not([data-theme=light]){color-scheme:light;--paper:#fff;--ground:#fff;--ink:#000;--soft:#000;--line:#777;--mark:#000;--done:#fff;--care:#000}
body{font-size:9.5pt}
.bar,.tools,nav,.skip,footer{display:none}
main{max-width:none;padding:0}
section{border:0;padding:0;break-before:page}
section.over,#order{break-before:auto}
section.over+section{break-before:auto}
tr,li{break-inside:avoid}
thead{display:table-header-group}
.scroll,.drawing{overflow:visible;max-height:none}
.drawing svg,.drawing[data-zoom] svg{width:100%;max-height:none}
.hit{display:none}
.tick label,ul.ticks label{min-height:0}
}
`;
