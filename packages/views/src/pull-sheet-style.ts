/** Paper of a pull sheet: the width between its margins, and the height of a pull's row that makes twelve fit, mm. */
export const PAPERS = {
  a4: { name: 'A4', width: 194, row: 9.4 },
  letter: { name: 'letter', width: 199.9, row: 8.2 },
} as const;

export type Paper = keyof typeof PAPERS;

/** How the sheet is printed: black on white, boxes a gloved hand can tick, nothing that needs another file. */
export const pullSheetStyle = (paper: Paper): string => `
@page { size: ${PAPERS[paper].name} portrait; margin: 8mm; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: ${PAPERS[paper].width}mm; color: #000; background: #fff; font: 9pt/1.25 system-ui, sans-serif; }
h1 { margin: 0 0 1mm; font-size: 12.5pt; line-height: 1.15; }
h2 { margin: 2.5mm 0 1mm; font-size: 10pt; }
p { margin: 0 0 1mm; }
.hint { margin: 4mm 0; padding: 2mm 3mm; border: 1px solid #555; font-size: 11pt; }
.facts { display: flex; flex-wrap: wrap; gap: 0 5mm; }
table { width: 100%; border-collapse: collapse; table-layout: fixed; margin-top: 1.5mm; }
th, td { border: 0.3mm solid #000; padding: 0 0.8mm; text-align: left; vertical-align: middle; overflow: hidden; }
th { font-size: 6.5pt; font-weight: 600; line-height: 1.1; height: 8mm; overflow-wrap: anywhere; }
td { height: ${PAPERS[paper].row}mm; }
td.no, td.key { font-size: 12pt; font-weight: 700; text-align: center; }
td.name { font-size: 7pt; line-height: 1.05; }
td.tick { text-align: center; }
td.tick span { display: inline-block; width: 6.8mm; height: 6.8mm; border: 0.5mm solid #000; vertical-align: middle; }
td.given { font-size: 6.5pt; vertical-align: bottom; color: #333; }
tr.fit td { height: 6mm; font-size: 8pt; font-weight: 600; background: #eee; }
tr.fit span { display: inline-block; width: 4mm; height: 4mm; margin-left: 1mm; border: 0.4mm solid #000; vertical-align: middle; }
.card { margin-top: 2mm; padding: 1mm 2mm; border: 0.6mm solid #000; }
.card h2 { margin-top: 0; }
.card ul { columns: 2; column-gap: 5mm; margin: 0; padding: 0; list-style: none; }
.card li { break-inside: avoid; font-size: 7.5pt; line-height: 1.15; }
.card li small { font-size: 6pt; color: #333; }
.aid { font-weight: 700; font-size: 8.5pt; }
.cautions { margin: 1.5mm 0 0; padding-left: 4mm; font-size: 6.5pt; line-height: 1.12; }
.page + .page { break-before: page; }
@media print { .hint { display: none; } }
@media screen { body { padding: 8mm 4mm; } }
`;
