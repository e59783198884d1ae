/**
 * What a chart is told to draw: numbers already in the units shown. Charts draw and never compute: every figure,
 * mean and band comes in here as a number that some table shows too.
 */

/** Index into the palette of combinations (colour, dash and end mark together); `ink`: no combination's. */
export type LineStyle = { combination: number } | 'ink';

export interface ChartLine {
  /** Unique within its panel. */
  id: string;
  style: LineStyle;
  /** `mean`: thick. `pull`: thin. `rejected`: thin and faint. */
  weight: 'mean' | 'pull' | 'rejected';
  x: number[];
  /** `null` breaks the line. */
  y: (number | null)[];
  /** At the line's end: `B`, `12° longer cam`; `null`: not labelled. */
  label: { key: string; name: string; value: string | null } | null;
  /** A dot at its points, as many as do not run into one another: what was measured beside what was computed. Missing: none. */
  dotted?: true;
}

export interface ChartBand {
  style: LineStyle;
  x: number[];
  low: (number | null)[];
  high: (number | null)[];
  /** A layer of a whole, named at its end, and how strongly it is filled; missing: a tint round a line, without a name. */
  layer?: { name: string; value: string | null; fill: 'strong' | 'middle' | 'faint' };
}

/** A point worth naming on its curve: a peak. */
export interface ChartMark {
  style: LineStyle;
  x: number;
  y: number;
  /** `503 hp at 6,450 rpm`; '' for a mark without words. */
  text: string;
  /** The same with its uncertainty, said in its place where there is room; missing: none. */
  longText?: string;
  /** Drawn as an open end with an arrow instead of a dot. */
  stillClimbing: boolean;
}

/** A speed ruled through one panel, with words on the side that they are about. */
export interface ChartRule {
  x: number;
  /** `clear above 5,000`; '' for a rule without words. */
  text: string;
  side: 'left' | 'right';
}

export interface ChartPanel {
  /** `power`, `torque`, `boost`, `gain`, … */
  id: string;
  /** `Power` */
  title: string;
  /** `hp`; never empty but for ratios */
  unit: string;
  /** After the unit: `SAE J1349`, `manifold tap`; '' none. */
  note: string;
  /** Decimals of the cursor's and the ticks' figures at least. */
  decimals: number;
  /** Of a figure that runs with its line; missing: `decimals`. */
  runningDecimals?: number;
  /** Share of the stack's height against the other panels, about 1. */
  share: number;
  /** Force zero into the range and draw its line. */
  zeroLine: boolean;
  /** What the axis has to span at least, whatever is drawn: pictures of one set share it. Missing: what is drawn. */
  reach?: [low: number, high: number];
  lines: ChartLine[];
  bands: ChartBand[];
  marks: ChartMark[];
  /** Missing: none. */
  rules?: ChartRule[];
}

/** A stack of panels that share one engine-speed axis. */
export interface ChartDescription {
  xTitle: string;
  xUnit: string;
  /** Range to show. */
  xRange: [low: number, high: number];
  /** Shaded or ruled as the window that counts; `null`: none. */
  xWindow: { range: [low: number, high: number]; text: string } | null;
  /** Stretches that are left out, shaded and numbered; missing: none. */
  xCuts?: { range: [low: number, high: number]; label: string }[];
  /** Decimals of the cursor's figure on the axis; missing: whole. */
  xDecimals?: number;
  /** The axis counts whole things: no tick between them. Missing: any value. */
  xCounts?: true;
  panels: ChartPanel[];
  decimalMark: '.' | ',';
  /** For a screen reader: one or two sentences that say what the picture shows. */
  alternative: string;
}

/** A compressor map with the lines on which combinations run. Numbers in the units shown. */
export interface MapDescription {
  /** `Air flow, corrected to 25 °C and 100 kPa` */
  xTitle: string;
  xUnit: string;
  yTitle: string;
  /** After the title, in small letters: what the lines are; '' none. */
  yNote: string;
  xRange: [low: number, high: number];
  yRange: [low: number, high: number];
  /** Of one speed of the impeller each, in pieces where only a part was measured: the rest is drawn broken; '' no label. */
  speedLines: { label: string; x: number[]; y: number[]; isMeasured: boolean }[];
  /** Lines of equal efficiency; one label may have several pieces. */
  efficiency: { label: string; x: number[]; y: number[] }[];
  /** Where flow reverses and where it can grow no more; an estimated edge is drawn broken and says so. */
  edges: { label: string; x: number[]; y: number[]; isEstimated: boolean }[];
  /** The map's own measured points; `null`: none. */
  points: { x: number[]; y: number[] } | null;
  /** Where each combination runs, with the engine speed of each point; `null` breaks the line. */
  operating: {
    key: string;
    name: string;
    style: LineStyle;
    engineSpeed: number[];
    x: (number | null)[];
    y: (number | null)[];
    /** Engine speeds that are marked and named on the line. */
    named: { engineSpeed: number; text: string }[];
  }[];
  decimalMark: '.' | ',';
  /** For a screen reader. */
  alternative: string;
}

export type ThemeName = 'light' | 'dark';

export interface DrawSize {
  width: number;
  height: number;
  /** Size of the ordinary text, px. */
  text: number;
  theme: ThemeName;
  /** `false`: no ground behind (transparent still). */
  ground: boolean;
}

/** One element of a drawing: an SVG tag with attributes; `text` for `text` elements. */
export interface SceneNode {
  tag: 'g' | 'path' | 'line' | 'rect' | 'circle' | 'text' | 'title' | 'image';
  attributes: Record<string, string | number>;
  children: SceneNode[];
  text?: string;
}

/** A finished drawing. The same scene becomes elements on the screen, an SVG file and a PNG. */
export interface Scene {
  width: number;
  height: number;
  nodes: SceneNode[];
  alternative: string;
}

/** Where things are in a drawn stack, for a cursor laid over it. Pixels of the scene. */
export interface StackGeometry {
  left: number;
  right: number;
  top: number;
  bottom: number;
  xRange: [low: number, high: number];
  /** Middle of the window's dimension line; `null`: there is none. */
  windowMiddle: number | null;
  panels: { id: string; top: number; bottom: number; yRange: [low: number, high: number] }[];
}

/** Where things are in a drawn map, for a marker laid over it. Pixels of the scene. */
export interface MapGeometry {
  left: number;
  right: number;
  top: number;
  bottom: number;
  xRange: [low: number, high: number];
  yRange: [low: number, high: number];
}

/** A cell of a card's table: its words, and whose they are. */
export interface CardCell {
  text: string;
  style: LineStyle;
  /** The figure that the table is about; in the first cell: a row that stays where others are left out. */
  strong?: true;
}

/** What a picture shows under its words. */
export type PictureBody =
  /** Panels over one engine-speed axis. */
  | { kind: 'stack'; chart: ChartDescription }
  /** For a thumbnail: one number, its band, and two curves without figures; `chart` `null`: the number alone. */
  | {
      kind: 'number';
      number: string;
      unit: string;
      band: string;
      what: string;
      chart: ChartDescription | null;
    }
  /** Columns with units; the first one names the row. */
  | { kind: 'table'; columns: { text: string; unit: string; style: LineStyle }[]; rows: CardCell[][] }
  /** What a combination is made of; what changed is marked by more than colour. */
  | { kind: 'facts'; rows: { label: string; text: string; before: string | null; isChanged: boolean }[] }
  | { kind: 'badges'; badges: { label: string; earned: boolean; why: string }[] }
  /** Sentences, the first of them the largest; `quiet` ones smaller. */
  | { kind: 'words'; paragraphs: { text: string; quiet?: true }[] };

/** A still: a picture with words round it. The same description makes a wide, a square and a tall picture. */
export interface StillDescription {
  headline: string;
  /** Under the headline, in smaller letters: what it goes on with. */
  subline: string;
  body: PictureBody;
  /**
   * Under the picture: what a doubter asks for: engine, fuel, air, factor, mixture, pulls, invented or not. Parts of a line
   * have ` · ` between them: where there is no room for all, whole parts leave, the last of the longest line first; the very last stays.
   */
  footer: string[];
  /** What nobody may overlook who has the picture: `Not for publication`; `null`: nothing. */
  warning: string | null;
  /** Whose picture it is; `null`: nobody says. The mark's address holds its own data; only the ratio of its size counts. */
  signature: { name: string; mark: { address: string; width: number; height: number } | null } | null;
  /** For a screen reader, beside headline and subline: one or two sentences that say what the picture shows. */
  alternative: string;
}

/** One step of a clip: a still whose lines draw themselves, then stand. */
export interface ClipStep {
  /** Unique in its clip. */
  id: string;
  still: StillDescription;
  /** How long it is there, its drawing included. */
  seconds: number;
  /** Share of `seconds` in which it draws itself; the rest stands. 0: it is there at once. */
  drawingShare: number;
  /** Lines, by id within their panel, that draw themselves along the engine speed with their numbers running; the others are there. `all`: every one. */
  drawn: string[] | 'all';
}

/** A clip: steps one after the other, at one scale. */
export interface ClipDescription {
  steps: ClipStep[];
}
