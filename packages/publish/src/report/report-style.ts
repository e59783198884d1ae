import { PALETTE, THEMES, type ThemeName } from '@pullbook/charts';

const tokens = (theme: ThemeName): string => {
  const { paper, card, ink, softInk, rule, quietChip, cautionChip, cautionInk } = THEMES[theme];
  return `--paper:${paper};--card:${card};--ink:${ink};--soft:${softInk};--rule:${rule};--quiet:${quietChip};--caution:${cautionChip};--caution-ink:${cautionInk};`;
};

const strokes = (theme: ThemeName): string =>
  PALETTE.map((one, place) => `.k${place} path{stroke:${one[theme]}}`).join('');

const hidden = PALETTE.map((_, place) => `.hide${place} .c${place}{visibility:hidden}`).join('');

/** How a report looks: light, dark where the reader has it so, black on white in print. `fonts`: its `@font-face` rules. */
export const reportStyle = (fonts: string, darkRules: string): string => `${fonts}
:root{color-scheme:light dark;${tokens('light')}}
${strokes('light')}${hidden}
@media screen and (prefers-color-scheme:dark){:root{${tokens('dark')}}${strokes('dark')}${darkRules}}
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:15px/1.5 Inter,Arial,sans-serif;-webkit-text-size-adjust:100%}
main{max-width:940px;margin:24px auto;padding:32px 40px 40px;background:var(--card);border:1px solid var(--rule);border-radius:6px;overflow-wrap:anywhere}
h1,h2,.answer{font-family:'Source Serif 4',Georgia,serif}
h1{margin:0 0 12px;font-size:32px;line-height:1.2;font-weight:600}
h2{margin:36px 0 10px;padding-top:12px;border-top:1.5px solid var(--ink);font-size:22px;line-height:1.25;font-weight:600}
h3{margin:18px 0 4px;font-size:15px;font-weight:600}
p{margin:0 0 8px}
ul{margin:0 0 12px;padding-left:20px}
li{margin:0 0 4px}
.shop{display:flex;justify-content:space-between;align-items:center;gap:20px;padding-bottom:14px;margin-bottom:22px;border-bottom:1px solid var(--rule)}
.shop img{display:block;max-width:180px;max-height:56px}
.shop p{margin:0}
.answer{margin:0 0 12px;font-size:21px;line-height:1.42}
.answer strong{font-weight:600}
.quiet,.facts{color:var(--soft)}
p.quiet{font-size:14px}
.verdict,.warning,.cautions li{padding:8px 14px;border-left:4px solid var(--ink);background:var(--quiet);margin:0 0 8px}
.warning,.cautions li{border-color:var(--caution-ink);background:var(--caution)}
.warning{color:var(--caution-ink);font-weight:600}
.cautions{list-style:none;padding:0}
nav{margin:18px 0 0;font-size:14px}
nav ul{display:flex;flex-wrap:wrap;gap:0 18px;list-style:none;padding:0;margin:0}
nav a{display:inline-block;padding:10px 0;color:inherit}
a:focus-visible,input:focus-visible,.scroll:focus-visible{outline:3px solid var(--ink);outline-offset:2px}
.scroll{overflow-x:auto;margin:14px 0 18px}
table{border-collapse:collapse;font-size:14px;line-height:1.4;font-variant-numeric:tabular-nums}
caption{text-align:left;font-weight:600;padding:0 0 4px}
th,td{padding:6px 12px;text-align:left;vertical-align:top;font-weight:400;overflow-wrap:break-word}
tr>:first-child{padding-left:0}
tbody th{min-width:min(12ch,40vw)}
thead th{font-weight:600;vertical-align:bottom;white-space:nowrap}
thead tr{border-bottom:1.5px solid var(--ink)}
tbody tr{border-bottom:1px solid var(--rule)}
.figure{text-align:right;white-space:nowrap}
.swatch{vertical-align:middle;margin-right:6px}
figure{margin:14px 0}.chart>script{display:none}
.drawing{touch-action:pan-y}
.drawing svg{display:block;width:100%;height:auto}
.narrow{display:none}
.hair{fill:none;stroke:var(--ink);stroke-width:1}
.controls{display:flex;flex-wrap:wrap;gap:8px 28px;align-items:center;margin-top:10px}
.speed{display:flex;flex:1 1 320px;align-items:center;gap:12px;min-height:44px}
.speed input{flex:1;min-width:120px;height:44px;accent-color:var(--ink)}
fieldset{display:flex;flex-wrap:wrap;gap:0 18px;align-items:center;border:0;margin:0;padding:0}
legend{float:left;margin-right:14px;padding:0}
fieldset label{display:inline-flex;align-items:center;gap:8px;min-height:44px}
fieldset input{width:22px;height:22px;accent-color:var(--ink)}
.readout td{text-align:right;white-space:nowrap}
.readout thead th+th{text-align:right}
.badge{font-weight:600}
.readout th,.readout td{padding:4px 8px}
.appendix{margin:48px 0 -12px;font-size:13px;font-weight:600;color:var(--soft)}
.sign{display:grid;grid-template-columns:1fr 1fr;gap:0 32px;margin-top:64px}
.sign div{border-top:1px solid var(--ink);padding-top:4px;color:var(--soft);font-size:13px}
@media screen and (min-width:1340px){main{max-width:1320px}main>:not(section),section>:not(figure){max-width:860px}.chart{display:grid;grid-template-columns:860px minmax(0,1fr);gap:0 24px}.live{position:sticky;top:16px;align-self:start}}
@media screen and (max-width:1339px){.used .live{display:contents}.used .figures{position:sticky;bottom:0;margin:0;max-height:45vh;overflow:auto;background:var(--card);border-top:1.5px solid var(--ink)}}
@media screen and (max-width:700px){main{margin:0;padding:20px 16px;border:0;border-radius:0}h1{font-size:25px}.answer{font-size:18px}.wide{display:none}.narrow{display:block}}
@media print{@page{margin:16mm 15mm}body{background:#fff;font-size:9.5pt}main{max-width:none;margin:0;padding:0;border:0}h1{font-size:20pt}h2{font-size:14pt;margin-top:20pt}.answer{font-size:13pt}table{font-size:8.5pt}nav,.live,.hair{display:none}.scroll{overflow:visible}h2,h3,caption{break-after:avoid}tr,figure,.verdict,.warning,li{break-inside:avoid}thead{display:table-header-group}.verdict,.warning,.cautions li{print-color-adjust:exact;-webkit-print-color-adjust:exact}.sign{break-inside:avoid}}
`;
